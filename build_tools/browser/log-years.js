export function showYears() {}
