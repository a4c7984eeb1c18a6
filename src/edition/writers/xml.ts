/** XML text out of which no value can break: everything is escaped, nothing is wrapped. */

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
}

/** What no XML 1.0 text may hold, not even escaped. Source: XML 1.0, fifth edition, production 2 (Char). */
const NO_CHARACTER =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters to be replaced.
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

/** A value as text of an element or of an attribute in double quotes; what XML cannot hold becomes U+FFFD. */
export function xmlText(value: string): string {
  return value.replace(NO_CHARACTER, '\ufffd').replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? sign)
}

/** An element whose content is one text. */
export function xmlElement(
  name: string,
  text: string,
  attributes: Readonly<Record<string, string>> = {},
): string {
  return `<${name}${attributeText(attributes)}>${xmlText(text)}</${name}>`
}

/** An element without content. */
export function emptyElement(name: string, attributes: Readonly<Record<string, string>>): string {
  return `<${name}${attributeText(attributes)}/>`
}

function attributeText(attributes: Readonly<Record<string, string>>): string {
  return Object.entries(attributes)
    .map(([name, value]) => ` ${name}="${xmlText(value)}"`)
    .join('')
}
