import type { ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'

/** A screen whose code is read when it is first opened. It is kept on the device with everything else, so this works with no signal. */
export function lazyScreen<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  let loaded: ComponentType<P> | undefined
  return function Lazy(props: P) {
    const [, show] = useState(0)
    useEffect(() => { if (!loaded) void load().then((screen) => { loaded = screen; show(1) }) }, [])
    const Screen = loaded
    return Screen ? <Screen {...props} /> : <p class="waiting" role="status">Turning to the page…</p>
  }
}
