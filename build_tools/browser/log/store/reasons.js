const REASONS = {
  QuotaExceededError: "the storage of this device is full",
  TimeoutError: "the browser does not answer",
  VersionError: "a newer build of this site keeps the log now; load that one to use it",
};

/** Why a browser does not keep what it was given, in words that follow a colon. */
export function whyNotKept(error) {
  if (error?.maybe) {
    return "the browser does not say how it ended, so it may be kept or not. Look in the job log";
  }
  return REASONS[error?.name]
    ?? `this browser keeps nothing for this site, as in some private windows, where storage is blocked or the disk is full (${error?.name ?? "no reason given"})`;
}
