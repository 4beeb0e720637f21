import { defineConfig } from 'vite';

/** Builds the command line and the server for Node; packages stay outside the bundle. */
export default defineConfig({
  build: {
    ssr: true,
    target: 'node20',
    outDir: 'dist/cli',
    emptyOutDir: true,
    rolldownOptions: {
      input: { reelward: 'src/cli/reelward.ts' },
      output: { entryFileNames: '[name].js', chunkFileNames: 'chunks/[name]-[hash].js' },
    },
  },
});
