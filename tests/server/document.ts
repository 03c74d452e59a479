import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import { parse } from 'yaml';
import * as z from 'zod';

const mediaSchema = z.object({ schema: z.record(z.string(), z.unknown()) });
const contentSchema = z.record(z.string(), mediaSchema);
const parameterSchema = z.object({
  name: z.string(),
  in: z.enum(['path', 'query']),
  required: z.boolean().optional(),
  schema: z.record(z.string(), z.unknown()).optional(),
  content: contentSchema.optional(),
});
const operationSchema = z.object({
  operationId: z.string(),
  parameters: z.array(parameterSchema).default([]),
  requestBody: z.object({ content: contentSchema }).optional(),
  responses: z.record(z.string(), z.object({ content: contentSchema.optional() })),
});
const documentSchema = z.object({
  paths: z.record(
    z.string(),
    z.record(z.enum(['get', 'post']), operationSchema).or(z.partialRecord(z.enum(['get', 'post']), operationSchema)),
  ),
  components: z.object({ schemas: z.record(z.string(), z.record(z.string(), z.unknown())) }),
});

export type Schema = Readonly<Record<string, unknown>>;
export type Parameter = z.infer<typeof parameterSchema>;
/** One operation as api/openapi.yaml has it. */
export interface Documented {
  readonly id: string;
  readonly method: 'GET' | 'POST';
  readonly path: string;
  readonly parameters: readonly Parameter[];
  readonly body: Schema | null;
  /** Media type of the answer. */
  readonly content: string;
  readonly statuses: readonly number[];
  /** Whether a body of a status and media type is what the document says; the words of what is not. */
  readonly fault: (status: number, type: string, body: unknown) => string | null;
}

const raw = documentSchema.parse(
  parse(readFileSync(fileURLToPath(new URL('../../api/openapi.yaml', import.meta.url)), 'utf8')),
);
const ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: false });
ajv.addSchema({ $id: 'doc', components: raw.components });
/** References of the document, made to point into it. */
const located = (schema: Schema): Schema =>
  JSON.parse(JSON.stringify(schema).replaceAll('"#/components/', '"doc#/components/'));

/** What a reference stands for. */
export function resolved(schema: Schema): Schema {
  const ref = typeof schema.$ref === 'string' ? schema.$ref.replace('#/components/schemas/', '') : null;
  return ref === null ? schema : (raw.components.schemas[ref] ?? {});
}

export const DOCUMENTED: readonly Documented[] = Object.entries(raw.paths).flatMap(([path, methods]) =>
  Object.entries(methods).map(([method, operation]): Documented => {
    const validators = new Map<string, ValidateFunction>();
    for (const [status, { content = {} }] of Object.entries(operation.responses))
      for (const [type, { schema }] of Object.entries(content))
        validators.set(`${status} ${type}`, ajv.compile(located(schema)));
    return {
      id: operation.operationId,
      method: method === 'get' ? 'GET' : 'POST',
      path,
      parameters: operation.parameters,
      body: operation.requestBody?.content['application/json']?.schema ?? null,
      content: Object.keys(operation.responses['200']?.content ?? {})[0] ?? '',
      statuses: Object.keys(operation.responses).map(Number),
      fault: (status, type, body) => {
        const validate = validators.get(`${status} ${type}`);
        if (!validate) return `${status} ${type} is not described`;
        return validate(body) ? null : ajv.errorsText(validate.errors);
      },
    };
  }),
);
