import {defineConfig} from 'vite';
import {checkedUnits} from './src/content/node/checked-units-plugin.ts';

export default defineConfig({
  base: './',
  server: {port: 4173},
  plugins: [checkedUnits()],
  worker: {
    format: 'es',
    plugins: () => [checkedUnits()],
    rolldownOptions: {checks: {pluginTimings: false}},
  },
  build: {
    target: 'es2022',
    sourcemap: false,
    // every file stays a file: the page's security policy allows no data: fonts, scripts or styles
    assetsInlineLimit: 0,
    // elk is 1.4 MB in a worker chunk of its own, loaded only when a person lays out a unit of their own
    chunkSizeWarningLimit: 1600,
    // how long the bundler's plugins took is nothing to tell someone who starts the tutor
    rolldownOptions: {checks: {pluginTimings: false}},
  },
});
