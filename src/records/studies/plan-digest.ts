/** The digest of a plan: that its text is the same, which is all that a digest can show. */
import { canonicalJson, digestOf } from '../issued/digest.ts'
import type { Study } from '../schema/loaded-records.ts'
import { writtenConditions } from './crossed-conditions.ts'

/** How the digest of a plan stands to the plan as it is written. */
export type DigestStanding = 'none' | 'agrees' | 'differs'

/**
 * Digest of what a plan fixes, from the texts as they are written.
 * @param study with or without a digest of its own, which is no part of what is digested
 * Notes: 1. it covers kind, question, day, hypothesis, classes, exclusions, batches and threshold rule; of each material its class
 * and what says so; conditions, usual index, factors, runs and programme; 2. titles, notes, results on the materials and readings
 * may come later and are no part of it;  3. the order of keys does not count, but for crossed factors and their levels, which make the codes
 * and the fraction.
 * Source: canonical JSON of RFC 8785, SHA-256.
 */
export function planDigest(study: Study): string {
  const { kind, question, usual, factors, runs, programme } = study
  const { digest: _, ...plan } = study.plan
  const materials = Object.entries(study.materials).map(([code, material]) => [
    code,
    { class: material.class, 'shown-by': material['shown-by'] },
  ])
  return digestOf(
    canonicalJson(
      asWritten({
        ...{ kind, question, plan, usual, factors, runs },
        programme: programme && { ...programme, crossed: inOrder(programme.crossed) },
        materials: Object.fromEntries(materials),
        conditions: writtenConditions(study),
      }),
    ),
  )
}

/** Whether a study's plan carries the digest of the plan as it is written today. */
export function digestStanding(study: Study): DigestStanding {
  const { digest } = study.plan
  if (digest === undefined) return 'none'
  return digest === planDigest(study) ? 'agrees' : 'differs'
}

/** Factors and levels as lists, which keep their order. */
function inOrder(crossed: NonNullable<Study['programme']>['crossed']): unknown {
  return crossed && Object.entries(crossed).map(([factor, levels]) => [factor, Object.entries(levels)])
}

/** Loaded values as the texts that they were read from; what is absent is left out. */
function asWritten(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(asWritten)
  if (typeof value !== 'object' || value === null) return value
  if ('written' in value && 'decimals' in value) return value.written
  // A moment or an age; the pages of a build have its class twice, so that instanceof would not know it.
  if ('toJSON' in value) return String(value)
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, member]) =>
      member === undefined ? [] : [[key, asWritten(member)]],
    ),
  )
}
