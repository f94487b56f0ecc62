import { todayAt } from '@lodebook/answers'
import type { CheckNow, Today } from '@lodebook/answers'
import { openEntry } from '../../drawer/drawer-state.ts'
import { Writer } from '../../form/writer.tsx'
import { book } from '../../link/desk.ts'
import { now } from '../../link/now.ts'
import { dayText } from '../../words/moment.ts'
import { CheckRow } from './check-row.tsx'
import { farText } from './far-text.ts'
import { InStrip } from './in-strip.tsx'

const parts = ['before leaving', 'at the portal', 'on the way in'] as const
const heads: Readonly<Record<typeof parts[number], string>> = { 'before leaving': 'Before leaving', 'at the portal': 'At the portal', 'on the way in': 'On the way in, as one comes to it' }

/** The check before going in: one tap an item, in the order in which one comes to it. */
export function CheckPage({ today }: { readonly today: Today }) {
  const at = todayAt(today, now.value)
  return (
    <>
      <h1 class="sentence">{at.sentence}</h1>
      <InStrip />
      {book.value && <Writer />}
      {parts.map((part) => {
        const items = at.items.filter(i => i.part === part), done = items.filter(i => i.now !== undefined && i.now.answer !== 'not looked at').length
        return items.length === 0 ? null : (
          <section class="section check-part" aria-labelledby={idOf(part)} key={part}>
            <h2 id={idOf(part)}>{heads[part]} <span class="soft small">{done} of {items.length}</span></h2>
            <ol class={part === 'on the way in' ? 'check rail' : 'check'}>{items.map(item => <CheckRow key={item.item} item={item} today={today} bumped={isBumped(at.items)} />)}</ol>
          </section>
        )
      })}
      {today.way === undefined && <p class="soft">Nothing has been surveyed yet, so hazards are in no order and have no distance.</p>}
      {today.leftOpen.length > 0 && (
        <section class="section" aria-labelledby="left-open">
          <h2 id="left-open">Left open since last time</h2>
          <ul class="left-open">{today.leftOpen.map(one => (
            <li key={one.entry + one.says}><span class="far">{farText(one.distance)}</span><button type="button" class="fig" onClick={() => openEntry(one.entry)}>{one.says}</button><span class="soft small">{one.since === undefined ? '' : dayText(one.since)}</span></li>
          ))}
          </ul>
        </section>
      )}
      <section class="section" aria-labelledby="care">
        <h2 id="care">Take care</h2>
        <ul class="cautions">{at.cautions.map(c => <li key={c.says}>{c.says} <span class="soft small">({c.source})</span></li>)}</ul>
        <p class="soft small prose">This page holds what was written against published rules. It has tested nothing. Ground, air and explosives are for competent and licensed people on the spot; local rules decide.</p>
      </section>
    </>
  )
}

const isBumped = (items: readonly CheckNow[]): boolean => items.find(i => i.item === 'Meter')?.now?.answer === 'as it should be'
const idOf = (part: string): string => part.replaceAll(' ', '-')
