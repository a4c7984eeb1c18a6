import { startBrowser } from '/tmp/pz/w-bench/test/site/browser.ts'
import { served } from '/tmp/pz/w-bench/test/site/built-site.ts'
import AxeBuilder from '@axe-core/playwright'
const Axe = (AxeBuilder as any).default ?? AxeBuilder
const url = await served('/tmp/pz/bench/site')
const b = await startBrowser()
for (const [w,h,s] of [[390,844,'light'],[1440,1000,'dark'],[800,900,'light']] as const) {
  const c = await b.newContext({ viewport: { width: w, height: h }, colorScheme: s, hasTouch: w===390 })
  const p = await c.newPage()
  let bytes=0, n=0
  p.on('console', m => console.log('console', m.type(), m.text()))
  p.on('pageerror', e => console.log('ERROR', e.message))
  await p.addInitScript(() => { const shifts: any[]=[]; Object.assign(globalThis,{shifts}); new PerformanceObserver(l=>{for(const e of l.getEntries() as any) shifts.push([e.value, e.startTime, ...e.sources.map((x:any)=>x.node?.id||x.node?.className||x.node?.nodeName)])}).observe({type:'layout-shift',buffered:true}) })
  for (const path of ['bench/','bench/?lot=orrinmoss-ash/OM-2024-010']) {
    await p.goto(url+path, { waitUntil: 'networkidle' })
    await p.waitForSelector('#bench[data-ready="yes"]'); await p.waitForTimeout(600)
    console.log(w, s, path, await p.textContent('#bench-headline'), 'scrollW', await p.evaluate(()=>document.documentElement.scrollWidth), 'shifts', JSON.stringify(await p.evaluate(()=>(globalThis as any).shifts)))
    const r = await new Axe({ page: p }).analyze()
    for (const v of r.violations) console.log('AXE', v.id, v.help, v.nodes.slice(0,3).map((x:any)=>x.html.slice(0,200)+' || '+x.failureSummary.slice(0,200)))
  }
  await p.screenshot({ path: `/tmp/pz/bench/a-${w}.png` })
  await p.evaluate(()=>document.querySelector('[id="lot/tests/0/condition"]')!.scrollIntoView({block:'start'}))
  await p.fill('[id="lot/tests/0/strength/1/specimens/c"]','')
  await p.fill('[id="lot/tests/0/strength/1/specimens/b"]','77,0 kN')
  await p.waitForTimeout(400)
  await p.screenshot({ path: `/tmp/pz/bench/b-${w}.png` })
  await p.fill('[id="lot/tests/0/strength/1/specimens/b"]','77.0 kN')
  await p.waitForTimeout(500)
  await p.screenshot({ path: `/tmp/pz/bench/c-${w}.png` })
  if (w===1440) { // timing
    const t = await p.evaluate(async () => { const f=document.getElementById('lot/quantity') as HTMLInputElement; const out:number[]=[]; for (let i=0;i<20;i++){ f.value=`90${i} t`; const s=performance.now(); f.dispatchEvent(new Event('input',{bubbles:true})); out.push(performance.now()-s); await new Promise(r=>setTimeout(r,300)) } return out.map(x=>Math.round(x*10)/10) })
    console.log('keystroke ms', t.join(' '))
    const long = await p.evaluate(() => new Promise<number[]>(res => { const o:number[]=[]; new PerformanceObserver(l=>{for(const e of l.getEntries()) o.push(Math.round(e.duration))}).observe({type:'longtask'} as any); const f=document.getElementById('lot/quantity') as HTMLInputElement; let i=0; const k=setInterval(()=>{f.value=`8${i++}0 t`; f.dispatchEvent(new Event('input',{bubbles:true})); if(i===10){clearInterval(k); setTimeout(()=>res(o),800)}},300) }))
    console.log('long tasks', long)
  }
  await c.close()
}
await b.close(); process.exit(0)
