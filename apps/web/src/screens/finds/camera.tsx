import { useEffect, useRef, useState } from 'preact/hooks'

type State = 'off' | 'on' | 'none' | 'refused' | 'not here'

const says: Readonly<Record<State, string>> = {
  off: 'The camera is off.',
  on: 'Asking the device for its camera…',
  none: 'This device has no camera that can be used. Type the number instead.',
  refused: 'The camera was refused. Allow it for this page in the browser’s settings, or type the number.',
  'not here': 'The browser gives the camera only to pages opened over https or on this very machine. Type the number instead.',
}

/** Milliseconds between two looks at the picture. */
const every = 200
/** Pixels across at which the picture is read: enough for a label at arm's length. */
const across = 640

/** The phone's camera, looking for codes; each code is told once until another is seen. */
export function Camera({ onRead }: { readonly onRead: (text: string) => void }) {
  const [state, setState] = useState<State>(navigator.mediaDevices === undefined ? 'not here' : 'off'), video = useRef<HTMLVideoElement>(null), tell = useRef(onRead)
  const [running, setRunning] = useState(false)
  tell.current = onRead
  useEffect(() => {
    if (state !== 'on') return
    let ended = false, stream: MediaStream | undefined, timer: ReturnType<typeof setTimeout> | undefined
    const look = async () => {
      const { default: decodeQR } = await import('qr/decode.js')
      stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' }, audio: false })
      if (ended || !video.current) { stop(stream); return }
      video.current.srcObject = stream
      await video.current.play()
      setRunning(true)
      const canvas = document.createElement('canvas'), paint = canvas.getContext('2d', { willReadFrequently: true })!
      let last = ''
      const once = () => {
        const seen = video.current
        if (ended || !seen) return
        if (seen.videoWidth > 0) {
          canvas.width = across
          canvas.height = Math.round(across * seen.videoHeight / seen.videoWidth)
          paint.drawImage(seen, 0, 0, canvas.width, canvas.height)
          const text = read(() => decodeQR(paint.getImageData(0, 0, canvas.width, canvas.height)))
          if (text !== undefined && text !== last) { last = text; tell.current(text) }
        }
        timer = setTimeout(once, every)
      }
      once()
    }
    look().catch((problem: unknown) => { if (!ended) setState(problem instanceof DOMException && problem.name === 'NotAllowedError' ? 'refused' : 'none') })
    return () => { ended = true; clearTimeout(timer); if (stream) stop(stream); setRunning(false) }
  }, [state])
  return (
    <div class="camera">
      {state === 'on' && <video ref={video} muted playsInline aria-label="What the camera sees" class={running ? undefined : 'dark'} />}
      {!running && <p class={state === 'none' || state === 'refused' || state === 'not here' ? 'doubt' : 'soft'} role="status">{says[state]}</p>}
      {state === 'off' && <button type="button" class="btn strong" onClick={() => setState('on')}>Turn the camera on</button>}
      {state === 'on' && <button type="button" class="btn" onClick={() => setState('off')}>Turn it off</button>}
      {(state === 'refused' || state === 'none') && <button type="button" class="btn" onClick={() => setState('on')}>Try again</button>}
    </div>
  )
}

const stop = (stream: MediaStream): void => { stream.getTracks().forEach((track) => { track.stop() }) }

/** The text of a code in the picture; most pictures hold none, and the decoder says that by throwing. */
function read(decode: () => string): string | undefined {
  try { return decode() } catch { return undefined }
}
