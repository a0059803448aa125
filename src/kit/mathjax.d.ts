// The little that is used of MathJax, which brings no types in this form.
declare module "mathjax" {
  /** An element of the engine's own small document. */
  export interface MathNode {
    readonly kind: string;
  }

  /** Reads formulae in one notation. */
  export interface InputJax {
    readonly name: string;
  }

  /** A document that formulae are set in. */
  export interface MathDocument {
    convertPromise(
      source: string,
      options: { readonly display: boolean; readonly em: number; readonly ex: number; readonly containerWidth: number },
    ): Promise<MathNode>;
  }

  /** The engine once its parts are loaded. */
  export interface MathEngine {
    init(options: unknown): Promise<void>;
    readonly startup: {
      readonly handler: unknown;
      readonly output: unknown;
      readonly adaptor: {
        parse(html: string): MathNode;
        firstChild(node: MathNode): MathNode;
        childNodes(node: MathNode): readonly MathNode[];
        serializeXML(node: MathNode): string;
      };
    };
    readonly _: {
      readonly mathjax: {
        readonly mathjax: {
          readonly handlers: { register(handler: unknown): void };
          document(text: MathNode, options: { readonly InputJax: InputJax; readonly OutputJax: unknown }): MathDocument;
        };
      };
      readonly input: {
        readonly tex_ts: { readonly TeX: new (options: unknown) => InputJax };
        readonly mathml_ts: { readonly MathML: new (options?: unknown) => InputJax };
      };
    };
  }

  const engine: MathEngine;
  export default engine;
}
