import type { AirPlace, LimitShown, Today } from '@lodebook/answers'
import { useState } from 'preact/hooks'
import { openEntry } from '../../drawer/drawer-state.ts'
import { Figure } from '../../drawer/figure.tsx'
import { now } from '../../link/now.ts'
import { linkTo } from '../../shell/route.ts'
import { momentText } from '../../words/moment.ts'
import { figures } from '../../words/number.ts'
import { farText } from './far-text.ts'
import { Trend } from './trend.tsx'

/** The limits that a trend is drawn against: the one that bites first. */
const first: Readonly<Record<string, readonly string[]>> = { oxygen: ['minimum'], 'carbon monoxide': ['ceiling', 'shift average'], 'carbon dioxide': ['shift average'], methane: ['act'], 'hydrogen sulphide': ['ceiling', 'short-term'], 'nitrogen dioxide': ['short-term'], 'radon progeny': ['ceiling'], 'respirable quartz dust': ['shift average'], 'wet bulb': ['act'] }
const units: Readonly<Record<string, string>> = { oxygen: '%', methane: '%', 'radon progeny': 'WL', 'respirable quartz dust': 'µg/m³', 'wet bulb': '°C' }

/** Air: what is outside a limit, worst first; what was not read; each place through the season. */
export function AirPage({ today }: { readonly today: Today }) {
  const { air } = today, ages = air.places.map(p => (now.value - Date.parse(p.latest.taken)) / 86_400_000), youngest = Math.min(...ages)
  const [chosen, choose] = useState<string>()
  const place = air.places.find(p => p.name === chosen) ?? air.places.find(p => p.latest.findings.length > 0) ?? air.places.at(-1)
  return (
    <>
      <h1 class="sentence">
        {air.places.length === 0 ? 'No air has been read yet.' : air.findings.length > 0 ? `Outside a published limit when last read, worst first: ${air.findings[0]!.substance} at ${air.findings[0]!.where}.` : 'Nothing was outside a limit in force when last read. That is not leave to go in.'}
        {air.places.length > 0 && youngest >= 1 && ` The last reading is ${Math.floor(youngest)} ${Math.floor(youngest) === 1 ? 'day' : 'days'} old: it says nothing of the air now.`}
      </h1>
      <p class="row row-start"><a class="btn strong" href={linkTo('write', 'air')}>Write a reading</a><a class="btn" href={linkTo('today', 'limits')}>The limits</a></p>
      {air.findings.length > 0 && <ol class="findings">{air.findings.map(f => <li key={f.answer.id}><span class="finding-value"><Figure answer={f.answer}>{figures(f.value, 3)} {f.unit}</Figure></span><p><b>{f.substance} at {f.where}</b>, {f.kind}: {f.rule}, {f.section}. <span class="soft">{f.says}.</span> {f.action}</p></li>)}</ol>}
      {air.notRead.length > 0 && <p class="doubt">Not read anywhere: {air.notRead.join(', ')}. A gas that was not read may be there.</p>}
      {place && (
        <section class="section" aria-labelledby="trend">
          <h2 id="trend">Through the season</h2>
          <div class="chips" role="group" aria-label="Place">{air.places.map(p => <button type="button" key={p.name} class="chip" aria-pressed={p === place} onClick={() => choose(p.name)}>{p.name} <span class="small">{farText(p.distance)}{p.latest.findings.length > 0 ? ' ✕' : ''}</span></button>)}</div>
          <PlaceShown place={place} limits={air.limits} />
        </section>
      )}
      <section class="section" aria-labelledby="ways">
        <h2 id="ways">Where each gas lies, and what the nose makes of it</h2>
        <dl class="gas-ways">{air.ways.map(w => <div key={w.gas}><dt>{w.gas.replace(/^./, c => c.toUpperCase())} <span class="soft small">{figures(w.weight, 3)} × air; hold at {w.hold.join(', ')}</span></dt><dd>{w.says}</dd></div>)}</dl>
        <p class="soft small">Weights as read in a mine gas chart (scribd.com/document/361817085); the rest is common teaching.</p>
      </section>
    </>
  )
}

function PlaceShown({ place, limits }: { readonly place: AirPlace, readonly limits: readonly LimitShown[] }) {
  const read = [...new Set(place.readings.flatMap(r => Object.keys(r.values)))], varied = read.filter(s => s === 'oxygen' || place.readings.some(r => ((r.values as Readonly<Record<string, number>>)[s] ?? 0) > 0))
  const flat = read.filter(s => !varied.includes(s)), { latest } = place
  const limitOf = (s: string) => {
    const [best] = (first[s] ?? []).flatMap(kind => limits.filter(l => l.substance === s && l.kind === kind))
    const value = best && Number(/-?[\d,]+\.?\d*/.exec(best.text)?.[0].replaceAll(',', ''))
    return best && value !== undefined ? { value, text: best.section } : undefined
  }
  return (
    <>
      <p class="small soft">Last read <button type="button" class="fig" onClick={() => openEntry(latest.entry)}>{momentText(latest.taken)}</button>. {flat.length > 0 && <>Nought every time: {flat.join(', ')}. </>}{latest.notRead.length > 0 && <>Not read: {latest.notRead.join(', ')}.</>}</p>
      <div class="trends">{varied.map(s => <Trend key={s} place={place} substance={s} unit={units[s] ?? 'ppm'} limit={limitOf(s)} />)}</div>
      {[...latest.doubts, ...latest.meter].length > 0 && <ul class="meter-words">{[...latest.doubts, ...latest.meter].map(m => <li key={m} class="doubt">{m}</li>)}</ul>}
    </>
  )
}
