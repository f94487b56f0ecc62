import './style/fonts.css'
import './style/tokens.css'
import './style/base.css'
import './style/shell.css'
import './style/sheet.css'
import './style/form.css'
import './style/finds.css'
import './style/drawer.css'
import './style/screens.css'
import './style/vein.css'
import './style/today.css'
import './style/lab.css'
import './style/print.css'
import { render } from 'preact'
import { openBook } from './link/desk.ts'
import { App } from './shell/app.tsx'

render(<App />, document.getElementById('app')!)
void openBook()
