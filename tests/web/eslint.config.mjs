// The page's script: what a linter can see of faults.
export default [
  {
    files: ["**/*.mjs"],
    languageOptions: {
      ecmaVersion: 2023, sourceType: "module",
      globals: Object.fromEntries(["window", "document", "location", "localStorage", "navigator", "fetch", "URL", "URLSearchParams", "Blob", "AbortController", "DOMException", "HTMLElement", "HTMLInputElement", "HTMLTextAreaElement",
        "HTMLSelectElement", "HTMLButtonElement", "HTMLFormElement", "HTMLTableElement", "HTMLTableRowElement", "HTMLUListElement", "HTMLIFrameElement", "FileSystemFileEntry", "FileSystemDirectoryEntry", "setTimeout", "clearTimeout"].map((name) => [name, "readonly"])),
    },
    linterOptions: { reportUnusedDisableDirectives: "error" },
    rules: {
      "array-callback-return": "error", "consistent-return": "error", "eqeqeq": "error", "no-constant-condition": "error", "no-dupe-keys": "error", "no-duplicate-imports": "error", "no-eval": "error",
      "no-fallthrough": "error", "no-implied-eval": "error", "no-param-reassign": "error", "no-promise-executor-return": "error", "no-self-compare": "error", "no-shadow": "error", "no-undef": "error",
      "no-unreachable": "error", "no-unused-vars": "error", "no-use-before-define": ["error", { functions: false, variables: false }], "no-var": "error", "no-throw-literal": "error", "prefer-const": "error",
      "require-atomic-updates": "off", "no-restricted-properties": ["error", { property: "innerHTML" }, { property: "outerHTML" }, { property: "insertAdjacentHTML" }, { object: "document", property: "write" }],
    },
  },
];
