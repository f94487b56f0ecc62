import { effect, signal } from '@preact/signals'

export const grounds = ['day', 'lamp', 'print'] as const
export type Ground = typeof grounds[number]

export const groundName = (g: Ground): string => `${g.charAt(0).toUpperCase()}${g.slice(1)}`

const kept = localStorage.getItem('ground')
/** The ground everything is drawn on; remembered on this device. */
export const ground = signal<Ground>(grounds.find(g => g === kept) ?? 'day')

const bar: Readonly<Record<Ground, string>> = { day: '#e9ece3', lamp: '#080504', print: '#ffffff' }
effect(() => {
  document.documentElement.dataset['ground'] = ground.value
  document.querySelector('meta[name="theme-color"]')?.setAttribute('content', bar[ground.value])
  localStorage.setItem('ground', ground.value)
})

// What is chosen in one window holds in the others that are open on this device.
addEventListener('storage', ({ key, newValue }) => {
  const chosen = key === 'ground' ? grounds.find(g => g === newValue) : undefined
  if (chosen !== undefined) ground.value = chosen
})
