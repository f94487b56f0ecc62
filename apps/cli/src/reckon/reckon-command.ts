import { ZodError } from 'zod'
import { exit } from '../exit.ts'
import type { Io } from '../io/io.ts'
import { Refusal, refuse } from '../refusal.ts'
import { table } from '../print/table.ts'
import type { Reckoning } from './define.ts'
import { reckonings } from './index.ts'
import { readInput } from './read-input.ts'
import { schemaRefusal } from './schema-refusal.ts'
import { fieldsOf } from './wanted.ts'

interface Options { readonly list?: true, readonly example?: true, readonly fields?: true, readonly json?: true }

/** `lodebook reckon`: lists, explains or runs. */
export async function reckonCommand(name: string | undefined, options: Options, io: Io): Promise<number> {
  if (options.list) {
    io.out(options.json ? `${JSON.stringify(reckonings.map(({ name, summary }) => ({ name, summary })), null, 2)}\n` : reckonings.map(({ name }) => `${name}\n`).join(''))
    return exit.ok
  }
  if (name === undefined) throw refuse('name', undefined, 'the name of a calculation; `lodebook reckon --list` gives them')
  const reckoning = find(name)
  if (options.fields) {
    io.out(table(fieldsOf(reckoning.schema).map(({ field, takes, optional }) => [field + (optional ? '?' : ''), takes]), { width: io.columns }))
    return exit.ok
  }
  if (options.example) {
    io.out(`${JSON.stringify({ input: reckoning.example, output: run(reckoning, reckoning.example) }, null, 2)}\n`)
    return exit.ok
  }
  io.out(`${JSON.stringify(run(reckoning, readInput(await io.stdin())))}\n`)
  return exit.ok
}

function find(name: string): Reckoning {
  const found = reckonings.find(reckoning => reckoning.name === name)
  if (found) return found
  const near = reckonings.map(reckoning => reckoning.name).filter(known => known.startsWith(name.slice(0, 4)) || name.startsWith(known.slice(0, 4)))
  throw refuse('name', name, near.length > 0 ? `a calculation that exists, such as ${near.join(' or ')}` : 'a calculation that `lodebook reckon --list` names')
}

/** A result that no number can hold is no result: JSON would print it as null and a script would read that as one. */
function held(result: unknown): unknown {
  JSON.stringify(result, (key, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw refuse(key, 'not finite', 'figures of a size that the result can be held in')
    return value
  })
  return result
}

/** Runs a reckoning; what its schema or its function refuses becomes one refusal. */
export function run(reckoning: Reckoning, input: unknown): unknown {
  try {
    return held(reckoning.run(input))
  } catch (failure) {
    if (failure instanceof ZodError) throw new Refusal(schemaRefusal(failure, reckoning.schema, input))
    throw failure
  }
}
