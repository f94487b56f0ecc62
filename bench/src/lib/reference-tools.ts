import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'

const PYTHON = '/usr/bin/python3'
const PACKAGES = ['r-base-core', 'r-cran-gstat', 'r-cran-sp', 'r-cran-jsonlite', 'python3-numpy', 'python3-scipy', 'libopenblas0-pthread']

const works = (command: string, args: readonly string[]) => spawnSync(command, args, { stdio: 'ignore' }).status === 0
const hasGstat = () => works('Rscript', ['-e', 'library(gstat); library(sp); library(jsonlite)'])
const hasScipy = () => works(PYTHON, ['-c', 'import numpy, scipy'])
/** Without it numpy and R fall back on a plain BLAS, and beating them would say nothing. */
const hasOpenBlas = () => existsSync('/usr/lib/x86_64-linux-gnu/openblas-pthread') || existsSync('/usr/lib/aarch64-linux-gnu/openblas-pthread')

export interface ReferenceTools { readonly gstat: boolean, readonly scipy: boolean, readonly openBlas: boolean }

/** Sees to gstat and scipy: installs Debian's when run there as root, otherwise says what is missing. */
export function referenceTools(): ReferenceTools {
  const look = () => ({ gstat: hasGstat(), scipy: hasScipy(), openBlas: hasOpenBlas() })
  const found = look()
  if (found.gstat && found.scipy && found.openBlas) return found
  if (existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    console.log(`Installing ${PACKAGES.join(' ')} ...`)
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    spawnSync('apt-get', ['update', '-qq'], { stdio: 'ignore', env })
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...PACKAGES], { stdio: 'ignore', env })
  }
  const now = look()
  if (!now.gstat) console.log('Without gstat: needs Rscript with gstat, sp and jsonlite (Debian: r-cran-gstat r-cran-sp r-cran-jsonlite).')
  if (!now.scipy) console.log(`Without scipy: needs ${PYTHON} with numpy and scipy (Debian: python3-numpy python3-scipy).`)
  if (!now.openBlas) console.log('OpenBLAS not found: numpy and R may be on a plain BLAS (Debian: libopenblas0-pthread).')
  return now
}

export interface ReferenceTiming {
  readonly median_s: number
  readonly min_s: number
  /** Processor seconds: on a busy machine the only ones that can be compared. */
  readonly median_cpu_s: number
  readonly check?: Record<string, number>
}
export type ReferenceRun = Record<string, ReferenceTiming | undefined>

/** One thread for the linear algebra of both, so that like is held against like. */
const ONE_THREAD = { ...process.env, OPENBLAS_NUM_THREADS: '1', OMP_NUM_THREADS: '1' }

/** Runs one of the scripts in checks/reference and reads its JSON; undefined when it fails, with what it said printed. */
function runScript(command: string, args: readonly string[]): unknown {
  const { status, signal, stdout, stderr } = spawnSync(command, args, { encoding: 'utf8', env: ONE_THREAD, maxBuffer: 2 ** 28 })
  if (status !== 0) {
    console.log(`${command} ${args.join(' ')} failed (${signal ?? `exit ${status}`}): ${stderr.trim().split('\n').at(-1)}`)
    return undefined
  }
  return JSON.parse(stdout) as unknown
}

/** One job of speed_gstat.R. */
export const runGstat = (script: string, data: string, repeats: number, job: string) => runScript('Rscript', [script, data, String(repeats), `^${job}$`]) as ReferenceRun | undefined
/** All jobs of speed_scipy.py. */
export const runScipy = (script: string, data: string, repeats: number) => runScript(PYTHON, [script, data, String(repeats)]) as ReferenceRun | undefined
/** kernels.py: GFLOP/s by kernel. */
export const runKernels = (script: string) => runScript(PYTHON, [script]) as Record<string, number> | undefined
