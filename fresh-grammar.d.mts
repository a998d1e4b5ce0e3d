export function freshGrammar(root?: string): void;
