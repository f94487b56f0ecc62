import { MemoryStore } from '../../src/index.ts'
import { conformance } from '../conformance.ts'

conformance('memory', () => Promise.resolve({ open: () => Promise.resolve(new MemoryStore()), drop: () => Promise.resolve() }), { lasts: false })
