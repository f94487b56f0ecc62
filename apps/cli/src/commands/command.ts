import type { Command } from 'commander'
import type { Io } from '../io/io.ts'

/** A command in a file of its own: adds itself to the program. Its action says how it ended through `done`. */
export type AddCommand = (program: Command, io: Io, done: (code: number) => void) => void
