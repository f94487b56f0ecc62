import type { CheckNow } from '@lodebook/answers'
import { kinds } from '@lodebook/book'
import type { FieldValue } from '@lodebook/book'
import { useEffect, useMemo, useState } from 'preact/hooks'
import type { FormHelp } from '../../bookkeeper/desk.ts'
import { ChoiceChips } from '../../form/choice-chips.tsx'
import { Keypad } from '../../form/keypad.tsx'
import { optionsFor } from '../../form/options.ts'
import { reading } from '../../form/reading.ts'
import { FigureBox } from '../../form/text-box.tsx'
import { newsOf } from '../../link/announce.ts'
import { book, desk } from '../../link/desk.ts'
import { linkTo } from '../../shell/route.ts'
import { localDay, localMoment } from '../../words/moment.ts'

const kind = kinds['air']!
const asked = [['oxygen', '%'], ['carbonMonoxide', 'ppm'], ['methane', '%'], ['hydrogenSulphide', 'ppm']] as const
const heights = ['sill', 'waist', 'head', 'back'] as const
const takenAs = { oxygen: '%', carbonMonoxide: 'ppm', methane: '%', hydrogenSulphide: 'ppm' } as const

/** What a four-gas meter shows, at the station that the item names: four figures and where it was held. */
export function AirQuick({ item, bumped, onSaved }: { readonly item: CheckNow, readonly bumped: boolean, readonly onSaved: () => void }) {
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>({}), [held, setHeld] = useState(''), [help, setHelp] = useState<FormHelp>(), [says, setSays] = useState<readonly string[]>([]), [sure, setSure] = useState(false)
  useEffect(() => { void desk.formHelp('air').then(setHelp) }, [])
  const options = useMemo(() => help && book.value ? optionsFor(kind, book.value, help, takenAs) : undefined, [help])
  const read = Object.fromEntries(asked.map(([name]) => [name, options ? reading(name, kind.fields[name]!, texts[name] ?? '', options) : { echo: '', problem: '' }]))
  const save = async () => {
    const writer = book.value?.writer ?? ''
    if (writer === '') { setSays(['Say who is writing first, at the head of this page.']); return }
    const bad = asked.find(([name]) => read[name]!.problem !== '')
    if (bad) { setSays([`${kind.fields[bad[0]]!.label}: ${read[bad[0]]!.problem}`]); return }
    const values = Object.fromEntries(asked.flatMap(([name]): [string, FieldValue][] => { const value = 'value' in read[name]! ? read[name].value : undefined; return value === undefined ? [] : [[name, value]] }))
    if (Object.keys(values).length === 0) { setSays(['Nothing is written yet.']); return }
    const meter = help?.before['meter']
    const draft = { kind: 'air', set: { place: { by: 'station', station: item.station! } as const, taken: localMoment(new Date()), ...values, ...(held === '' ? {} : { heldAt: held }), ...(meter === undefined ? {} : { meter }), ...(bumped ? { bumpTested: localDay(new Date()) } : {}) } }
    const doubts = (await desk.check(draft)).filter(f => f.warning).map(f => f.message)
    if (doubts.length > 0 && !sure) { setSays([...doubts, 'Press again to keep it as it stands.']); setSure(true); return }
    const done = await desk.write(writer, draft)
    if (!done.saved) { setSays(done.problems.filter(p => !p.warning).map(p => p.message)); return }
    newsOf.value = `Air at ${item.station ?? ''}. Saved on this device.`
    onSaved()
  }
  return (
    <form class="item-wide item-more" noValidate onSubmit={(e) => { e.preventDefault(); void save() }}>
      <div class="pieces air-pieces">
        {asked.map(([name, unit]) => {
          const id = `quick-${item.station ?? ''}-${name}`
          return (
            <div class="piece" key={name}>
              <label class="small" for={id}>{kind.fields[name]!.label}, {unit}</label>
              <FigureBox id={id} label={kind.fields[name]!.label} hint={undefined} echo="" problem={read[name]!.problem} value={texts[name] ?? ''} dimension={unit === '%' ? 'percent' : 'concentration'} onText={(t) => { setTexts({ ...texts, [name]: t }); setSure(false) }} />
            </div>
          )
        })}
      </div>
      <p class="small">Held at</p>
      <ChoiceChips of={heights} value={held} onTake={setHeld} />
      {says.map(s => <p class="doubt" role="alert" key={s}>{s}</p>)}
      <div class="row row-start">
        <a class="btn quiet" href={linkTo('write', 'air')}>All fields</a>
        <button type="submit" class="btn strong">{sure ? 'Keep it all the same' : 'Keep the reading'}</button>
      </div>
      <Keypad />
    </form>
  )
}
