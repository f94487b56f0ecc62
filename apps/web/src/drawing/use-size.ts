import type { RefObject } from 'preact'
import { useLayoutEffect, useState } from 'preact/hooks'

export interface Size { readonly width: number, readonly height: number }

/** The room an element has, pixels; follows it as it changes. */
export function useSize(ref: RefObject<Element | null>): Size {
  const [size, set] = useState<Size>({ width: 0, height: 0 })
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return
    const watch = new ResizeObserver(([entry]) => {
      const { width, height } = entry!.contentRect
      set(old => old.width === width && old.height === height ? old : { width, height })
    })
    watch.observe(element)
    return () => watch.disconnect()
  }, [])
  return size
}
