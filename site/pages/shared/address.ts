// Where the files of this build are, and what the build wrote into the page about itself.

/** The address of a file of this build by its name in the build's folder, where the scripts
 *  that load it are too. */
export const ofBuild = (name: string): URL => new URL(name, import.meta.url);

/** The line that the build wrote into the page: its id, the bytes of the page's engine and
 *  that size in words. Before a build it is only "unbuilt". */
export const buildLine = (): string =>
  document.querySelector<HTMLMetaElement>("meta[name=build]")?.content ?? "";
