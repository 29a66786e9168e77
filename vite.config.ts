import {defineConfig} from 'vite';

export default defineConfig({
  base: './',
  // lets `npm run dev` and the preview share the address people know from `npm start`
  server: {port: 4173},
  worker: {format: 'es'},
  build: {
    target: 'es2022',
    sourcemap: false,
    // elk is 1.4 MB and loaded only when a person lays out a unit of their own
    chunkSizeWarningLimit: 1600,
  },
});
