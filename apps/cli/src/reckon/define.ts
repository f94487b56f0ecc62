import type { z } from 'zod'

/** One reckoning that stands on its own at the prompt: a name, a schema for its input, an input that runs, and the function. */
export interface Reckoning {
  readonly name: string
  readonly summary: string
  readonly schema: z.ZodType
  readonly example: unknown
  /** Checks the input and computes. Throws ZodError or InputError on bad input. */
  readonly run: (input: unknown) => unknown
}

/** Ties a schema to a function of what the schema lets through. */
export function reckoning<T extends z.ZodType>(name: string, summary: string, schema: T, example: z.input<T>, run: (input: z.output<T>) => unknown): Reckoning {
  return { name, summary, schema, example, run: input => run(schema.parse(input)) }
}
