import { unitText } from '../words/number.ts'

/** The unit that a bare number takes, beside the field where it is typed. */
export function UnitChoice({ id, label, units, unit, onUnit }: {
  readonly id: string
  readonly label: string
  readonly units: readonly string[]
  readonly unit: string
  readonly onUnit: (unit: string) => void
}) {
  if (units.length === 0) return null
  return (
    <select class="box unit" id={`${id}-unit`} aria-label={`Unit of ${label} when none is written`} value={unit} onChange={e => onUnit(e.currentTarget.value)}>
      {unit === '' && <option value="">unit?</option>}
      {units.map(u => <option key={u} value={u}>{unitText(u)}</option>)}
    </select>
  )
}
