/** What lies around the records of a new site: what is not kept, and how each change is checked and the site built. */
import { type NewFile, textOf } from './new-file.ts'

export function projectFiles(name: string): NewFile[] {
  return [
    { path: '.gitignore', text: GIT_IGNORED },
    { path: 'package.json', text: packageText(name) },
    { path: '.github/workflows/certificates.yml', text: WORKFLOW },
  ]
}

const GIT_IGNORED = textOf([
  '# What the tool makes anew. Keep issued/ under version control: what was issued is never made again.',
  'node_modules/',
  '.puteoli/',
  'dist/',
  'dist-internal/',
  '*.next/',
  '*.lock',
  '.issue-lock*',
])

function packageText(name: string): string {
  const scripts = {
    check: 'puteoli check --content .',
    build: `puteoli build --content . --out ../${name}-site`,
  }
  return `${JSON.stringify({ name: name.toLowerCase(), private: true, scripts }, null, 2)}\n`
}

/** Steps that any runner of such files takes; elsewhere the four commands are the same. */
const WORKFLOW = `# Checks every change of the records, and builds the site of the main branch.
# Once, in this folder: npm install PACKAGE (the file puteoli-VERSION.tgz, or where you keep it), then commit
# package.json and package-lock.json.
name: certificates
on:
  push: { branches: [main] }
  pull_request: {}
jobs:
  certificates:
    runs-on: ubuntu-latest
    steps:
      - uses: actions/checkout@v4
      - uses: actions/setup-node@v4
        with: { node-version: 24 }
      - run: npm ci
      - run: npx puteoli check --content .
      - run: npx puteoli build --content . --out "$RUNNER_TEMP/site"
      # Any static web server takes this folder as it is: copy it there, or download it from the run.
      - uses: actions/upload-artifact@v4
        if: github.ref == 'refs/heads/main'
        with:
          name: site
          path: \${{ runner.temp }}/site
          include-hidden-files: true
`
