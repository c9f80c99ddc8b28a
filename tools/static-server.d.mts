export type RunningServer = {
  readonly port: number;
  /** Ends in a slash. */
  readonly url: string;
  readonly close: () => Promise<void>;
};

export type ServerOptions = {
  readonly root: string;
  /** 0 (the default) takes any free port; another moves on while it is taken. */
  readonly port?: number;
  readonly host?: string;
};

export declare function startServer(options: ServerOptions): Promise<RunningServer>;
