import { Component, type ReactNode } from 'react';

type Props = { readonly what: string; readonly children: ReactNode };

/** Keeps an error where it happened: what was entered stays, and everything else goes on. */
export class ErrorBoundary extends Component<Props, { readonly message: string | null }> {
  override state: { readonly message: string | null } = { message: null };

  static getDerivedStateFromError(error: unknown): { message: string } {
    return { message: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    const { message } = this.state;
    if (message === null) return this.props.children;
    return (
      <div className="trouble" role="alert">
        <p>
          {this.props.what} could not be shown. Your readings are safe: they are kept as they were entered.
        </p>
        <p className="small quiet">{message}</p>
        <button type="button" className="button" onClick={() => this.setState({ message: null })}>
          Try again
        </button>
      </div>
    );
  }
}
