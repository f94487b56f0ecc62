/** What a command touches of the machine; tests pass their own. */
export interface Io {
  /** Everything on standard input. */
  stdin(): Promise<Uint8Array>
  out(text: string): void
  err(text: string): void
  readonly env: Readonly<Record<string, string | undefined>>
  readonly cwd: string
  /** The name under which the person is logged in; empty where there is none. */
  readonly user: string
  /** The checkout the command runs from. */
  readonly root: string
  /** Width of the terminal; 80 where there is none. */
  readonly columns: number
  /** Milliseconds since 1970. */
  now(): number
  random(bytes: number): Uint8Array
  /** Resolves when the program is told to stop. */
  stopped(): Promise<void>
}
