// Where the files of this build lie: beside the scripts that load them.

/** The address of a file of this build by its name in the build's folder. */
export const ofBuild = (name: string): URL => new URL(name, import.meta.url);
