import { expose } from 'comlink'
import { openDesk } from './open-desk.ts'

const alone = <T>(job: () => Promise<T>): Promise<T> => navigator.locks.request('lodebook-pen', job)

expose(openDesk({
  base: new URL('./', self.location.origin + import.meta.env.BASE_URL.replace(/^\.\//, '/')).href,
  alone,
  others: new BroadcastChannel('lodebook'),
  now: () => Date.now(),
  every: (seconds, job) => { setInterval(job, seconds * 1000); addEventListener('online', job) },
}))
