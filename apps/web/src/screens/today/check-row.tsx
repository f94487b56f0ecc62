import type { CheckNow, Today } from '@lodebook/answers'
import type { Blob as KeptBlob, FieldValue } from '@lodebook/book'
import { useState } from 'preact/hooks'
import { openEntry } from '../../drawer/drawer-state.ts'
import { PictureInput } from '../../form/picture-input.tsx'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'
import { clockText, dayText, localMoment } from '../../words/moment.ts'
import { AirQuick } from './air-quick.tsx'
import { farText } from './far-text.ts'

type Answer = 'as it should be' | 'something found' | 'not looked at'

/** One item of the check: two answers under the thumb, and a note or a picture when there is something to say. */
export function CheckRow({ item, today, bumped }: { readonly item: CheckNow, readonly today: Today, readonly bumped: boolean }) {
  const [open, setOpen] = useState<'nothing' | 'more' | 'air'>('nothing'), [trouble, setTrouble] = useState('')
  const answer = async (given: Answer, more: Readonly<Record<string, FieldValue>> = {}) => {
    const writer = book.value?.writer ?? ''
    if (writer === '') { document.getElementById('writer')?.focus(); setTrouble('Say who is writing first.'); return }
    const done = await desk.write(writer, { kind: 'check', set: { item: item.item, answer: given, taken: localMoment(new Date()), ...(item.station === undefined ? {} : { station: item.station }), ...(item.about === undefined ? {} : { about: item.about }), ...more } })
    if (!done.saved) { setTrouble(`Not saved: ${done.problems.find(p => !p.warning)?.message ?? 'something does not fit'}`); return }
    setTrouble('')
    newsOf.value = `${item.item}: ${given === 'as it should be' ? item.good : given === 'something found' ? item.bad : 'not looked at'}. Saved on this device.`
    setOpen(given === 'something found' ? 'more' : 'nothing')
  }
  const said = item.now?.answer, isAir = item.byEntry === 'air'
  const finding = isAir && said === 'read' ? today.air.places.find(p => p.station === item.station)?.latest.findings[0] : undefined
  const state = said === undefined || said === 'not looked at' ? 'open' : said === 'something found' || finding ? 'found' : 'done'
  return (
    <li class={`item ${state}`}>
      {item.part === 'on the way in' && <span class="far">{farText(item.distance)}</span>}
      <div class="item-asks">
        <p class="asks">{item.asks}</p>
        <p class="soft small">
          {item.why !== '' && <>{item.why}. </>}
          {item.now ? <SaidNow item={item} /> : item.before ? <>Last: <button type="button" class="fig" onClick={() => openEntry(item.before!.entry)}>{wordsFor(item, item.before.answer)}, {dayText(item.before.taken)}</button></> : null}
        </p>
      </div>
      <div class="item-answers" role="group" aria-label={item.item}>
        {isAir
          ? <button type="button" class="tap" aria-pressed={said === 'read'} aria-expanded={open === 'air'} onClick={() => setOpen(open === 'air' ? 'nothing' : 'air')}>{said === 'read' ? 'read again' : 'write it down'}</button>
          : <button type="button" class="tap" aria-pressed={said === 'as it should be'} onClick={() => { void answer('as it should be') }}>{item.good}</button>}
        <button type="button" class="tap" aria-pressed={said === 'something found' || (isAir && finding !== undefined)} onClick={() => { void answer('something found') }}>{item.bad}</button>
        <button type="button" class="tap more-tap" aria-label={`${item.item}: note, picture, or not looked at`} aria-expanded={open === 'more'} onClick={() => setOpen(open === 'more' ? 'nothing' : 'more')}>…</button>
      </div>
      {finding && <p class="doubt item-wide">{finding.answer.sentence}</p>}
      {trouble !== '' && <p class="problem item-wide" role="alert">{trouble}</p>}
      {open === 'air' && <AirQuick item={item} bumped={bumped} onSaved={() => setOpen('nothing')} />}
      {open === 'more' && <More item={item} onGiven={answer} onMend={async (set) => { if (item.now && item.now.answer !== 'read') await desk.write(book.value?.writer ?? '', { kind: 'check', entry: item.now.entry, set }); setOpen('nothing') }} />}
    </li>
  )
}

const wordsFor = (item: CheckNow, answer: Answer | 'read'): string => answer === 'as it should be' ? item.good : answer === 'something found' ? item.bad : answer

const SaidNow = ({ item }: { readonly item: CheckNow }) => (
  <button type="button" class="fig" onClick={() => openEntry(item.now!.entry)}>{wordsFor(item, item.now!.answer)}, {item.now!.by}, {clockText(item.now!.taken)}{item.now!.note === undefined ? '' : `: ${item.now!.note}`}{item.now!.picture ? ', with a picture' : ''}</button>
)

/** A note, a picture, or 'not looked at'. They go to the answer that stands, or begin one. */
function More({ item, onGiven, onMend }: {
  readonly item: CheckNow
  readonly onGiven: (given: Answer, more?: Readonly<Record<string, FieldValue>>) => Promise<void>
  readonly onMend: (set: Readonly<Record<string, FieldValue>>) => Promise<void>
}) {
  const [note, setNote] = useState(item.now?.note ?? ''), [picture, setPicture] = useState('')
  const more = (): Record<string, FieldValue> => ({ ...(note.trim() === '' ? {} : { note: note.trim() }), ...(picture === '' ? {} : { picture: JSON.parse(picture) as KeptBlob }) })
  const id = `check-${item.item.replace(/\W+/g, '-')}`
  return (
    <div class="item-wide item-more">
      <label class="label" for={`${id}-note`}>Note</label>
      <textarea id={`${id}-note`} class="box" rows={2} value={note} onInput={e => setNote(e.currentTarget.value)} />
      <label class="label" for={`${id}-picture`}>Picture</label>
      <PictureInput id={`${id}-picture`} text={picture} onText={setPicture} />
      <div class="row row-start">
        <button type="button" class="btn" onClick={() => { void onGiven('not looked at', more()) }}>Not looked at</button>
        <button type="button" class="btn strong" onClick={() => { void (item.now && item.now.answer !== 'read' ? onMend(more()) : onGiven('something found', more())) }}>Keep it</button>
      </div>
    </div>
  )
}
