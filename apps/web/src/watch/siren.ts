import { signal } from '@preact/signals'

/** Whether this device may make a sound: browsers allow it only after the page has been touched once. */
export const mayRing = signal(false)
let context: AudioContext | undefined, ringing: ReturnType<typeof setInterval> | undefined

function arm(): void {
  context ??= new AudioContext()
  void context.resume().then(() => { mayRing.value = context?.state === 'running' })
}
addEventListener('pointerdown', arm)
addEventListener('keydown', arm)

/** Two tones, one second. */
function sound(): void {
  if (!context || context.state !== 'running') return
  for (const [at, pitch] of [[0, 880], [0.35, 660], [0.7, 880]] as const) {
    const tone = context.createOscillator(), loud = context.createGain(), begin = context.currentTime + at
    tone.type = 'square'
    tone.frequency.value = pitch
    loud.gain.setValueAtTime(0.0001, begin)
    loud.gain.exponentialRampToValueAtTime(0.5, begin + 0.02)
    loud.gain.exponentialRampToValueAtTime(0.0001, begin + 0.32)
    tone.connect(loud).connect(context.destination)
    tone.start(begin)
    tone.stop(begin + 0.34)
  }
  navigator.vibrate?.([400, 150, 400])
}

/** Rings every two seconds until it is stopped. */
export function ring(on: boolean): void {
  if (on && ringing === undefined) {
    sound()
    ringing = setInterval(sound, 2000)
  } else if (!on && ringing !== undefined) {
    clearInterval(ringing)
    ringing = undefined
  }
}

/** One ring, to hear whether it is loud enough. */
export function tryRing(): void { arm(); setTimeout(sound, 60) }
