import { useEffect, useState } from 'preact/hooks'

const beat = 900 // milliseconds a case is shown

/** Steps through equally likely outcomes, by hand or by itself; the estimate when none is chosen. */
export function Cases({ count, value, onChoose }: {
  readonly count: number
  readonly value: number | undefined
  readonly onChoose: (k: number | undefined) => void
}) {
  const [playing, play] = useState(false)
  useEffect(() => {
    if (!playing) return
    const timer = setInterval(() => onChoose(((value ?? -1) + 1) % count), beat)
    return () => clearInterval(timer)
  }, [playing, value, count])
  const step = (by: number) => { play(false); onChoose(((value ?? (by > 0 ? -1 : 0)) + by + count) % count) }
  return (
    <div class="cases" role="group" aria-label="Ways the ground could be">
      <button type="button" class="tool" onClick={() => step(-1)} aria-label="One way before">‹</button>
      <button type="button" class="tool" onClick={() => step(1)} aria-label="Next way">›</button>
      <button type="button" class="tool wide" onClick={() => play(!playing)} aria-pressed={playing}>{playing ? 'stop' : 'play'}</button>
      {value !== undefined && <button type="button" class="tool wide" onClick={() => { play(false); onChoose(undefined) }}>estimate</button>}
      <span class="soft small" aria-live={playing ? 'off' : 'polite'}>{value === undefined ? `${count} ways it could be, each as likely` : `way ${value + 1} of ${count}`}</span>
    </div>
  )
}
