import { cpus, loadavg, release, totalmem } from 'node:os'

/** One line that says where the figures come from. */
export function machineLine(...more: string[]): string {
  const processors = cpus()
  return [
    `${processors.length} x ${processors[0]?.model.trim() ?? 'unknown processor'}`, `${Math.round(totalmem() / 2 ** 30)} GiB`, `Linux ${release()}`,
    `Node ${process.version} (V8 ${process.versions.v8})`, ...more, `load ${loadavg()[0]!.toFixed(2)}`,
  ].join(', ')
}
