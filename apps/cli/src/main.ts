import { nodeIo } from './io/node-io.ts'
import { lodebook } from './lodebook.ts'

/** Runs the command line and leaves its exit code with the process, so that what is still being written gets out. */
export async function main(options: { readonly root: string }): Promise<void> {
  process.exitCode = await lodebook(process.argv.slice(2), nodeIo(options.root))
}
