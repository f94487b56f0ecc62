/** What a command says to the shell when it ends. */
export const exit = {
  ok: 0,
  /** The book was read, and something in it is wrong. */
  problems: 1,
  /** What was typed or read in will not do; nothing was written. */
  badInput: 2,
  /** A file, the disk or the network would not be read or written. */
  unreachable: 3,
  /** A fault in the program itself. */
  fault: 4,
} as const

export const exitWords = `Exit codes:
  0  done
  1  the book has problems
  2  bad input; nothing was written
  3  could not read or write a file or a port
  4  a fault in the program itself`
