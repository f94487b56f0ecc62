import { readFileSync } from 'node:fs'

/** The published sets of checks/data/usepa_ucl_examples.csv, by name. */
export function usepa(name: string): readonly number[] {
  const text = readFileSync(new URL('../../../../checks/data/usepa_ucl_examples.csv', import.meta.url), 'utf8')
  const values = text.trim().split('\n').slice(1).map(line => line.split(',')).filter(([set]) => set === name).map(([, , value]) => Number(value))
  if (values.length === 0) throw new Error(`no set ${name}`)
  return Object.freeze(values)
}
