import preact from '@preact/preset-vite'
import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'

/** Everything the app needs is in dist/ and kept on the device at the first visit, so that it opens with no signal. */
export default defineConfig({
  root: import.meta.dirname,
  base: './',
  build: { target: 'es2022', outDir: 'dist', emptyOutDir: true, modulePreload: { polyfill: false }, assetsInlineLimit: 0 },
  worker: { format: 'es' },
  plugins: [
    preact({ devToolsEnabled: false, prefreshEnabled: false, reactAliasesEnabled: false }),
    VitePWA({
      registerType: 'prompt',
      injectRegister: false,
      includeAssets: ['icon.svg', 'icon-192.png', 'icon-512.png'],
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,png,woff2}', '**/atkinson-hyperlegible-latin-?00-normal-*.woff'],
        navigateFallback: 'index.html',
        navigateFallbackDenylist: [/^\/api\//],
        cleanupOutdatedCaches: true,
        clientsClaim: true,
      },
      manifest: {
        name: 'Lodebook',
        short_name: 'Lodebook',
        description: 'The crew’s field book that does the reckoning',
        display: 'standalone',
        start_url: './',
        scope: './',
        background_color: '#e9ece3',
        theme_color: '#e9ece3',
        icons: [
          { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any maskable' },
        ],
        shortcuts: [
          { name: 'Write a sample', url: './#/write/sample' },
          { name: 'Write a shot', url: './#/write/shot' },
        ],
      },
    }),
  ],
})
