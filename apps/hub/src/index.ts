// Serving a book to the crew
export { HubError } from './hub-error.ts'
export { hubApp } from './hub-app.ts'
export type { HubOptions } from './hub-app.ts'
export { startHub } from './start-hub.ts'
export type { Hub, HubStart } from './start-hub.ts'

// Watching the call-out clock
export { alarmText, callOuts, watchCallOuts } from './call-out-watch.ts'
export type { Watch, WatchOptions } from './call-out-watch.ts'

// Keeping it
export { SqliteStore } from './sqlite-store.ts'
export type { SqliteOptions } from './sqlite-store.ts'
