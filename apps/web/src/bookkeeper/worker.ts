import { expose } from 'comlink'
import { openDesk } from './open-desk.ts'

// A page that came over plain http from another machine has no locks: there the store's refusal of a place that is taken keeps the chain whole.
const alone = <T>(job: () => Promise<T>): Promise<T> => 'locks' in navigator ? navigator.locks.request('lodebook-pen', job) : job()

expose(openDesk({
  base: new URL('./', self.location.origin + import.meta.env.BASE_URL.replace(/^\.\//, '/')).href,
  alone,
  others: new BroadcastChannel('lodebook'),
  now: () => Date.now(),
  every: (seconds, job) => { setInterval(job, seconds * 1000); addEventListener('online', job) },
}))
