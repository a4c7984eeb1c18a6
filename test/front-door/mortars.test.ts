/** A clause on an index: its condition and age, a test that is awaited, overdue or not valid. */
import { judgeThroughTheFrontDoor, mortar, mortarLot } from './front-door.ts'

const index = 'property: strength-activity-index, condition: cool, age: 28 d, at-least: 75 %'
/** The control reached 40.0 MPa at 28 d. */
const at28 = (strength: string, day = '2026-02-02') =>
  `{ age: 28 d, tested: ${day}T09:00, mean: ${strength}, of: 3 }`

judgeThroughTheFrontDoor('an index', [
  {
    title: '30.0 of 40.0 MPa is 75 %, the very limit',
    clause: index,
    lots: [mortarLot(at28('30.0 MPa'))],
    outcome: 'meets',
  },
  {
    title: '29.8 of 40.0 MPa is 74.5 %, rounded to the even 74',
    clause: index,
    lots: [mortarLot(at28('29.8 MPa'))],
    outcome: 'does-not-meet',
  },
  {
    title: '29.9 of 40.0 MPa is 74.75 %, rounded to 75',
    clause: index,
    lots: [mortarLot(at28('29.9 MPa'))],
    outcome: 'meets',
  },
  {
    title: 'another age is another index',
    clause: index,
    lots: [mortarLot('{ age: 7 d, tested: 2026-01-12T09:00, mean: 30.0 MPa, of: 3 }')],
    outcome: 'not-reported',
  },
  {
    title: 'tested two days late, beyond 12 h',
    clause: index,
    lots: [mortarLot(at28('30.0 MPa', '2026-02-04'))],
    outcome: 'not-valid',
  },
  {
    title: 'cast on 5 March and listed for 28 d',
    clause: index,
    lots: [{ on: '2026-03-01', more: mortar('2026-03-05', ['{ age: 28 d }']) }],
    outcome: 'pending',
  },
  {
    title: 'listed for 2 February and never tested',
    clause: index,
    lots: [mortarLot('{ age: 28 d }')],
    outcome: 'not-reported',
  },
  { title: 'no mortar was made', clause: index, outcome: 'not-reported' },
])
