/** Names under _astro/ carry a hash of the content before the extension; any change of code changes it. */
const HASHED = /(_astro\/[^"'\s()]+?)\.[\w-]{8}(\.\w+)(?=["'\s)?#]|$)/g

/** A text with the hash taken out of every asset name in it. */
export function withoutHashes(text: string): string {
  return text.replaceAll(HASHED, '$1$2')
}
