import { killing } from './killing.ts'

killing(20)
