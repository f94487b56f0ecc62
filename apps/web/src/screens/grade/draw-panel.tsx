import { veinToGrid } from '@lodebook/answers'
import type { VeinAt } from '@lodebook/answers'
import type { VeinPoint } from '@lodebook/reckon'
import { useState } from 'preact/hooks'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'

/** Corners tapped on the long section become a panel of the crew's own, kept in the book like any other entry. */
export function DrawPanel({ vein, corners, onCorners }: {
  readonly vein: VeinAt
  readonly corners: readonly VeinPoint[] | undefined
  readonly onCorners: (corners: readonly VeinPoint[] | undefined) => void
}) {
  const [name, setName] = useState(''), [trouble, setTrouble] = useState('')
  if (!corners) return <button type="button" class="btn" onClick={() => onCorners([])}>Draw a panel</button>
  const keep = async () => {
    const places = corners.map((corner) => {
      const [east, north, up] = veinToGrid(vein, corner).map(v => Math.round(v * 1000) / 1000) as [number, number, number]
      return { by: 'grid', east, north, up } as const
    })
    const done = await desk.write(book.value!.writer || 'somebody at this device', { kind: 'panel', set: { name: name.trim(), vein: vein.name, corners: places } })
    const wrong = done.saved ? '' : done.problems.find(p => !p.warning)?.message ?? 'Not saved.'
    setTrouble(wrong)
    if (wrong !== '') return
    newsOf.value = `Panel ${name.trim()} is kept.`
    setName('')
    onCorners(undefined)
  }
  return (
    <div class="draw-panel" role="group" aria-label="Draw a panel">
      <p>Tap its corners on the section, in order. <b>{corners.length}</b> so far.</p>
      <input type="text" class="box" aria-label="Name of the panel" placeholder="the pocket behind A7" value={name} onInput={e => setName(e.currentTarget.value)} />
      <button type="button" class="btn" disabled={corners.length === 0} onClick={() => onCorners(corners.slice(0, -1))}>Take one back</button>
      <button type="button" class="btn strong" disabled={corners.length < 3 || name.trim() === ''} onClick={() => void keep()}>Keep it</button>
      <button type="button" class="btn quiet" onClick={() => onCorners(undefined)}>Leave it</button>
      {trouble !== '' && <p role="alert">{trouble}</p>}
    </div>
  )
}
