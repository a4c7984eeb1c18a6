import { startBrowser } from '/tmp/pz/w-bench/test/site/browser.ts'
import { served } from '/tmp/pz/w-bench/test/site/built-site.ts'
const url = await served('/tmp/pz/bench/site')
const b = await startBrowser()
const [,, path='bench/', name='s', width='1440', scheme='light'] = process.argv
const c = await b.newContext({ viewport: { width: Number(width), height: width==='390'?844:1000 }, colorScheme: scheme as 'dark' })
const p = await c.newPage()
p.on('console', m => console.log('console', m.type(), m.text()))
p.on('pageerror', e => console.log('ERROR', e.message, e.stack?.slice(0,600)))
p.on('requestfailed', r => console.log('failed', r.url()))
await p.goto(url+path, { waitUntil: 'networkidle' })
await p.waitForTimeout(800)
console.log('ready', await p.getAttribute('#bench','data-ready'), '|', await p.textContent('#bench-headline'), '|', await p.textContent('#bench-state'))
await p.screenshot({ path: `/tmp/pz/bench/${name}.png` })
await p.screenshot({ path: `/tmp/pz/bench/${name}-full.png`, fullPage: true })
await b.close(); process.exit(0)
