import type { FindAt } from '@lodebook/answers'
import type { Blob as KeptBlob } from '@lodebook/book'
import { useEffect, useState } from 'preact/hooks'
import type { EntryLine } from '../../bookkeeper/desk.ts'
import { PictureShown } from '../../drawer/picture-shown.tsx'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'
import { localMoment } from '../../words/moment.ts'

/** Pictures of a find. A tap on one marks the spot; the mark is kept as shares of the picture, not drawn into it. */
export function Photos({ find }: { readonly find: FindAt }) {
  const [trouble, setTrouble] = useState('')
  const write = async (draft: Parameters<typeof desk.write>[1], news: string) => {
    const writer = book.value!.writer
    if (writer === '') { setTrouble('Say who is writing first, on the page Write.'); return }
    const done = await desk.write(writer, draft)
    setTrouble(done.saved ? '' : done.problems[0]?.message ?? 'It could not be written.')
    if (done.saved) newsOf.value = news
  }
  const take = async (file: File) => {
    const bytes = new Uint8Array(await file.arrayBuffer())
    const kept: KeptBlob = { sha256: await desk.putBlob(bytes), type: file.type || 'application/octet-stream', bytes: bytes.length, name: file.name }
    await write({ kind: 'photo', set: { file: kept, caption: find.title, of: find.entry, taken: localMoment(new Date()) } }, 'Photo kept; tap it to mark the spot')
  }
  return (
    <section aria-labelledby="photos">
      <h2 id="photos">Pictures of the spot</h2>
      {find.photos.length === 0 && <p class="soft">None yet. One with something of known size in it, and one from two steps back, find a spot again when paint has gone.</p>}
      <ul class="plain-list">
        {find.photos.map(photo => (
          <li key={photo.entry}>
            <OnePhoto id={photo.entry} x={photo.x} y={photo.y} onMark={(x, y) => { void write({ entry: photo.entry, kind: 'photo', set: { markX: x, markY: y } }, 'The spot is marked') }} />
          </li>
        ))}
      </ul>
      <p>
        <label class="btn file-btn">Take or add a picture
          <input
            type="file"
            accept="image/*"
            capture="environment"
            class="off-screen"
            onChange={(e) => {
              const file = e.currentTarget.files?.[0]
              if (file) take(file).catch(() => setTrouble('It could not be kept: the device may be full.'))
            }}
          />
        </label>
      </p>
      <p class="problem" role="alert">{trouble}</p>
    </section>
  )
}

/** Shares are kept to a thousandth: finer than a finger. */
const share = (part: number): number => Math.round(Math.min(1, Math.max(0, part)) * 1000) / 1000

function OnePhoto({ id, x, y, onMark }: {
  readonly id: string
  readonly x: number | undefined
  readonly y: number | undefined
  readonly onMark: (x: number, y: number) => void
}) {
  const [line, setLine] = useState<EntryLine>(), [marking, setMarking] = useState(false)
  useEffect(() => { void desk.entries([id]).then(([found]) => { setLine(found) }) }, [id])
  const file = line?.entry.fields['file'] as KeptBlob | undefined
  if (!file) return <p class="soft">…</p>
  return (
    <figure>
      <div
        class={marking ? 'spot marking' : 'spot'}
        onClick={(e) => {
          if (!marking) return
          const box = e.currentTarget.getBoundingClientRect()
          onMark(share((e.clientX - box.left) / box.width), share((e.clientY - box.top) / box.height))
          setMarking(false)
        }}
      >
        <PictureShown picture={file} />
        {x !== undefined && y !== undefined && (
          <svg viewBox="0 0 1 1" preserveAspectRatio="none" role="img" aria-label="The spot is marked">
            {['spot-ring', 'spot-ring ink'].map(c => <ellipse key={c} class={c} cx={x} cy={y} rx="0.04" ry="0.04" vector-effect="non-scaling-stroke" />)}
          </svg>
        )}
      </div>
      <p><button type="button" class="btn" aria-pressed={marking} onClick={() => setMarking(!marking)}>{marking ? 'Tap the spot in the picture' : x === undefined ? 'Mark the spot' : 'Mark it anew'}</button></p>
    </figure>
  )
}
