import type { CsvPreview } from '@lodebook/book/csv'
import { kinds } from '@lodebook/book'
import { unitText } from '../../words/number.ts'

/** How each column would be read, with the first thing in it; where the headings do not say, the crew points. */
export function ColumnsRead({ preview, map, onMap }: {
  readonly preview: CsvPreview
  readonly map: Readonly<Record<string, string>>
  readonly onMap: (map: Readonly<Record<string, string>>) => void
}) {
  const fields = preview.kinds.flatMap(id => Object.entries(kinds[id]?.fields ?? {}).map(([name, field]) => ({
    value: preview.kinds.length > 1 ? `${id}.${name}` : name, label: preview.kinds.length > 1 ? `${kinds[id]!.label}: ${field.label}` : field.label,
  })))
  return (
    <div class="scroll-x" tabIndex={0} role="group" aria-label="Columns of the file">
      <table>
        <thead><tr><th scope="col">Column</th><th scope="col">First in it</th><th scope="col">Is read as</th><th scope="col">Or as</th></tr></thead>
        <tbody>
          {preview.columns.map(c => (
            <tr key={c.letter}>
              <th scope="row">{c.heading || c.letter}</th>
              <td>{c.example}</td>
              <td>{c.feeds.length > 0 ? c.feeds.map(f => `${f.label}${f.unit ? `, ${unitText(f.unit)}` : ''}`).join('; ') : c.toNote ? 'put into the note' : 'left out'}</td>
              <td>
                <select class="box" aria-label={`Read ${c.heading || c.letter} as`} value={map[c.heading || c.letter] ?? ''} onChange={e => onMap({ ...map, [c.heading || c.letter]: e.currentTarget.value })}>
                  <option value="">as the heading says</option>
                  {fields.map(f => <option key={f.value} value={f.value}>{f.label}</option>)}
                </select>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
