import { allowNotices, keepsWatch, screenKept } from '../../watch/keep-watch.ts'
import { mayRing, tryRing } from '../../watch/siren.ts'

/** Makes this device the one that the outside person keeps by: sound tried, screen kept on. */
export function WatchHere() {
  return (
    <section class="section" aria-labelledby="watch-here">
      <h2 id="watch-here">This device keeps watch</h2>
      <p class="prose">For the person outside: leave this page open, plug the device in, and try the sound.</p>
      <p class="row row-start">
        <button type="button" class="btn" onClick={() => tryRing()}>Try the sound</button>
        <button type="button" class="btn" aria-pressed={keepsWatch.value} onClick={() => { keepsWatch.value = !keepsWatch.value; void allowNotices() }}>{keepsWatch.value ? 'The screen is kept on' : 'Keep the screen on'}</button>
      </p>
      <p class="soft small" role="status">{mayRing.value ? 'Sound is ready.' : 'No sound until the screen has been touched once.'}{screenKept.value === false && ' This device does not let the page keep the screen on; set it so in the device’s own settings.'}</p>
    </section>
  )
}
