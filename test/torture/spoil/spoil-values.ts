/** Ways to spoil what a record says, while its YAML stays sound. */
import { dump } from 'js-yaml'
import type { Chance } from '../../../src/demo/chance.ts'
import { parseYaml } from '../../../src/records/yaml/parse-yaml.ts'
import { ODD_KEYS, ODD_VALUES, ODD_WRITINGS } from './odd-values.ts'
import { oneOf } from './spoil-text.ts'

/** A member of a mapping or an item of a list. */
interface Place {
  readonly holder: Record<string, unknown> | unknown[]
  readonly key: string | number
}

function placesIn(value: unknown, places: Place[] = []): Place[] {
  if (typeof value !== 'object' || value === null) return places
  for (const key of Object.keys(value)) {
    const holder = value as Place['holder']
    const at = Array.isArray(holder) ? Number(key) : key
    places.push({ holder, key: at })
    placesIn(valueAt({ holder, key: at }), places)
  }
  return places
}

function valueAt({ holder, key }: Place): unknown {
  return (holder as Record<string | number, unknown>)[key]
}

/** Even under a key such as `__proto__`, which an assignment would not keep. */
function put({ holder, key }: Place, value: unknown): void {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true })
}

function takeOut({ holder, key }: Place): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1)
  else delete holder[key]
}

/** Stands in for a value until the record is written, which then stands there as it is. */
const written = (text: string) =>
  `RAW${[...text].map((sign) => sign.charCodeAt(0).toString(16)).join('_')}RAW`

function unraw(text: string): string {
  return text.replace(/['"]?RAW([0-9a-f_]*)RAW['"]?/g, (_, codes: string) =>
    codes === '' ? '' : String.fromCharCode(...codes.split('_').map((code) => Number.parseInt(code, 16))),
  )
}

interface Spoiling {
  readonly place: Place
  readonly places: readonly Place[]
  readonly chance: Chance
}

const copied = (value: unknown): unknown => structuredClone(value)

const SPOIL_VALUE: Readonly<Record<string, (spoiling: Spoiling) => void>> = {
  'odd value': ({ place, chance }) => put(place, copied(oneOf(ODD_VALUES, chance))),
  'odd writing': ({ place, chance }) => put(place, written(oneOf(ODD_WRITINGS, chance))),
  'taken out': ({ place }) => takeOut(place),
  'odd key beside it': ({ place, chance }) => {
    const value = copied(chance.whole(0, 1) === 0 ? oneOf(ODD_VALUES, chance) : valueAt(place))
    if (!Array.isArray(place.holder)) put({ holder: place.holder, key: oneOf(ODD_KEYS, chance) }, value)
    else place.holder.push(value)
  },
  'key renamed': ({ place, chance }) => {
    const value = valueAt(place)
    takeOut(place)
    if (!Array.isArray(place.holder)) put({ holder: place.holder, key: oneOf(ODD_KEYS, chance) }, value)
  },
  'key misspelt': ({ place, chance }) => {
    if (Array.isArray(place.holder)) return
    const key = String(place.key)
    const at = chance.whole(0, key.length)
    const value = valueAt(place)
    takeOut(place)
    put(
      {
        holder: place.holder,
        key: key.slice(0, at) + oneOf(['', 'x', '-', ' '], chance) + key.slice(at + 1),
      },
      value,
    )
  },
  'in a list': ({ place }) => put(place, [valueAt(place)]),
  'in a mapping': ({ place, chance }) =>
    put(place, { [oneOf(['value', 'a', '0', 'from', 'any-of', 'load'], chance)]: valueAt(place) }),
  'out of its mapping': ({ place }) => {
    const value = valueAt(place)
    if (typeof value === 'object' && value !== null) put(place, Object.values(value)[0] ?? null)
  },
  'swapped with another': ({ place, places, chance }) => {
    const other = oneOf(places, chance)
    const [a, b] = [copied(valueAt(place)), copied(valueAt(other))]
    put(place, b)
    put(other, a)
  },
  'copied from another': ({ place, places, chance }) => put(place, copied(valueAt(oneOf(places, chance)))),
  'written many times': ({ place, chance }) => {
    const { holder } = place
    const times = oneOf([1, 2, 20, 100], chance)
    const value = valueAt(place)
    for (let time = 0; time < times; time += 1)
      if (Array.isArray(holder)) holder.push(copied(value))
      else put({ holder, key: `${String(place.key)}${time}` }, copied(value))
  },
  'turned round': ({ place }) => {
    const value = valueAt(place)
    if (Array.isArray(value)) value.reverse()
    else if (typeof value === 'object' && value !== null)
      put(place, Object.fromEntries(Object.entries(value).reverse()))
  },
  emptied: ({ place }) => {
    const value = valueAt(place)
    put(place, Array.isArray(value) ? [] : typeof value === 'object' ? {} : '')
  },
  'number moved': ({ place, chance }) => {
    const value = valueAt(place)
    const factor = oneOf([-1, 0, 0.001, 0.1, 10, 1000, 1e9, 1e300], chance)
    if (typeof value === 'number') put(place, value * factor)
    else if (typeof value === 'string')
      put(
        place,
        value.replace(/\d+(\.\d+)?/, (number) => String(Number(number) * factor)),
      )
  },
  'unit changed': ({ place, chance }) => {
    const value = valueAt(place)
    if (typeof value === 'string')
      put(place, value.replace(/ \S+$/, ` ${oneOf(['%', 'kN', 'lbf', 'MPa', 'psi', 'ohm', 'kohm', 't', 'kg', 'g', 'mm', 'in', 'd', 'h', 'degC', '°F', 'percentage points', 'ohm m'], chance)}`)) // biome-ignore format: a list of units
  },
  'day moved': ({ place, chance }) => {
    const value = valueAt(place)
    const shifted = (_: string, year: string, month: string) =>
      `${String(Number(year) + chance.whole(-2, 2)).padStart(4, '0')}-${month}-${String(chance.whole(1, 31)).padStart(2, '0')}`
    if (typeof value === 'string') put(place, value.replace(/(\d{4})-(\d{2})-\d{2}/, shifted))
  },
}

/** Names of the ways above. */
export const VALUE_WAYS: readonly string[] = Object.keys(SPOIL_VALUE)

/**
 * A mapping or list with one to three of its values spoiled.
 * @param value is changed
 * @returns it, and the ways in which it was spoiled
 */
export function spoiledValue(value: object, chance: Chance): { value: object; ways: readonly string[] } {
  const ways: string[] = []
  for (let left = chance.whole(1, 3); 0 < left; left -= 1) {
    const places = placesIn(value)
    if (places.length === 0) break
    const way = oneOf(VALUE_WAYS, chance)
    ways.push(way)
    SPOIL_VALUE[way]?.({ place: oneOf(places, chance), places, chance })
  }
  return { value, ways }
}

/** The YAML text of a record with values spoiled; null where the text holds no mapping or list. */
export function withSpoiledValues(
  text: string,
  chance: Chance,
): { readonly text: string; readonly ways: readonly string[] } | null {
  const yaml = parseYaml(text)
  if (!('value' in yaml) || typeof yaml.value !== 'object' || yaml.value === null) return null
  const { value, ways } = spoiledValue(yaml.value, chance)
  return { text: unraw(asYaml(value, chance)), ways }
}

/** As a block, within braces, or as JSON: three readers' paths to the same value. */
function asYaml(record: object, chance: Chance): string {
  if (chance.whole(0, 5) === 0) return `${JSON.stringify(record)}\n`
  return dump(record, {
    flowLevel: oneOf([-1, -1, 1, 2], chance),
    lineWidth: -1,
    noRefs: true,
    skipInvalid: true,
  })
}
