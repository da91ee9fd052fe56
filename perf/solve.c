/*
 * The solver in C, for comparison: block by block, dense complex elimination with partial pivoting at every
 * frequency, then multiplication with the input currents. Reads a network that perf/networkText.ts has written:
 *   blocks points repeats, the frequencies, then for each block
 *   n places inputs, node numbers, plus and minus of each place, inputs (place kind controlPlus controlMinus re im), G, C, B.
 * Prints microseconds of each repeat, then the checksum (sum of |V| over all nodes and frequencies).
 */
#define _POSIX_C_SOURCE 199309L
#define PI 3.14159265358979323846
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

typedef struct { int place, kind, plus, minus; double re, im; } Input;
typedef struct {
  int n, m, inputs;
  int *node, *plus, *minus;
  Input *input;
  double *g, *c, *b, *work, *unit_re, *unit_im, *current_re, *current_im;
} Block;

static void solve_dense(double *restrict a, int n, int m) {
  const int width = 2 * (n + m);
  for (int k = 0; k < n; k++) {
    double *row_k = a + k * width;
    int pivot = k;
    double best = row_k[2 * k] * row_k[2 * k] + row_k[2 * k + 1] * row_k[2 * k + 1];
    for (int i = k + 1; i < n; i++) {
      const double *p = a + i * width + 2 * k;
      const double size = p[0] * p[0] + p[1] * p[1];
      if (size > best) { best = size; pivot = i; }
    }
    if (pivot != k)
      for (int j = 2 * k; j < width; j++) {
        const double t = a[pivot * width + j];
        a[pivot * width + j] = row_k[j];
        row_k[j] = t;
      }
    const double ir = row_k[2 * k] / best, ii = -row_k[2 * k + 1] / best;
    row_k[2 * k] = ir;
    row_k[2 * k + 1] = ii;
    for (int i = k + 1; i < n; i++) {
      double *row_i = a + i * width;
      const double r0 = row_i[2 * k], i0 = row_i[2 * k + 1];
      if (r0 == 0 && i0 == 0) continue;
      const double lr = r0 * ir - i0 * ii, li = r0 * ii + i0 * ir;
      for (int j = 2 * k + 2; j < width; j += 2) {
        row_i[j] -= lr * row_k[j] - li * row_k[j + 1];
        row_i[j + 1] -= lr * row_k[j + 1] + li * row_k[j];
      }
    }
  }
  for (int col = 2 * n; col < width; col += 2)
    for (int i = n - 1; i >= 0; i--) {
      double *row = a + i * width;
      double sr = row[col], si = row[col + 1];
      for (int j = i + 1; j < n; j++) {
        const double xr = a[j * width + col], xi = a[j * width + col + 1];
        sr -= row[2 * j] * xr - row[2 * j + 1] * xi;
        si -= row[2 * j] * xi + row[2 * j + 1] * xr;
      }
      row[col] = sr * row[2 * i] - si * row[2 * i + 1];
      row[col + 1] = sr * row[2 * i + 1] + si * row[2 * i];
    }
}

static void solve_block(Block *q, const double *hz, int points, double **re, double **im) {
  const int n = q->n, m = q->m, width = 2 * (n + m);
  for (int f = 0; f < points; f++) {
    const double w = 2 * PI * hz[f], per_w = 1 / w;
    for (int i = 0; i < n; i++) {
      double *row = q->work + i * width;
      for (int j = 0; j < n; j++) {
        row[2 * j] = q->g[i * n + j];
        row[2 * j + 1] = w * q->c[i * n + j] - per_w * q->b[i * n + j];
      }
      for (int p = 0; p < m; p++) {
        row[2 * (n + p)] = i == q->minus[p] ? 1 : i == q->plus[p] ? -1 : 0;
        row[2 * (n + p) + 1] = 0;
      }
    }
    solve_dense(q->work, n, m);
    for (int i = 0; i < n; i++)
      for (int p = 0; p < m; p++) {
        q->unit_re[(p * n + i) * points + f] = q->work[i * width + 2 * (n + p)];
        q->unit_im[(p * n + i) * points + f] = q->work[i * width + 2 * (n + p) + 1];
      }
  }
  for (int k = 0; k < m * points; k++) q->current_re[k] = q->current_im[k] = 0;
  for (int e = 0; e < q->inputs; e++) {
    const Input in = q->input[e];
    double *sr = q->current_re + in.place * points, *si = q->current_im + in.place * points;
    for (int f = 0; f < points; f++) {
      if (in.kind == 0) { sr[f] += in.re; si[f] += in.im; continue; }
      double vr = 0, vi = 0;
      if (in.plus >= 0) { vr += re[in.plus][f]; vi += im[in.plus][f]; }
      if (in.minus >= 0) { vr -= re[in.minus][f]; vi -= im[in.minus][f]; }
      sr[f] += in.re * vr;
      si[f] += in.re * vi;
    }
  }
  for (int i = 0; i < n; i++) {
    double *vr = re[q->node[i]], *vi = im[q->node[i]];
    for (int f = 0; f < points; f++) vr[f] = vi[f] = 0;
    for (int p = 0; p < m; p++) {
      const double *ur = q->unit_re + (p * n + i) * points, *ui = q->unit_im + (p * n + i) * points;
      const double *sr = q->current_re + p * points, *si = q->current_im + p * points;
      for (int f = 0; f < points; f++) {
        vr[f] += ur[f] * sr[f] - ui[f] * si[f];
        vi[f] += ur[f] * si[f] + ui[f] * sr[f];
      }
    }
  }
}

static double number(void) {
  double v;
  if (scanf("%lf", &v) != 1) { fputs("unreadable network\n", stderr); exit(1); }
  return v;
}
static double *doubles(int n) { return malloc(sizeof(double) * (size_t)(n > 0 ? n : 1)); }
static double *read_doubles(int n) {
  double *p = doubles(n);
  for (int i = 0; i < n; i++) p[i] = number();
  return p;
}
static int *read_ints(int n) {
  int *p = malloc(sizeof(int) * (size_t)(n > 0 ? n : 1));
  for (int i = 0; i < n; i++) p[i] = (int)number();
  return p;
}

int main(void) {
  const int blocks = (int)number(), points = (int)number(), repeats = (int)number();
  double *hz = read_doubles(points);
  Block *q = calloc((size_t)blocks, sizeof(Block));
  int nodes = 0;
  for (int b = 0; b < blocks; b++) {
    Block *k = q + b;
    k->n = (int)number(); k->m = (int)number(); k->inputs = (int)number();
    k->node = read_ints(k->n); k->plus = read_ints(k->m); k->minus = read_ints(k->m);
    k->input = calloc((size_t)(k->inputs + 1), sizeof(Input));
    for (int e = 0; e < k->inputs; e++) {
      Input *in = k->input + e;
      in->place = (int)number(); in->kind = (int)number(); in->plus = (int)number(); in->minus = (int)number();
      in->re = number(); in->im = number();
    }
    k->g = read_doubles(k->n * k->n); k->c = read_doubles(k->n * k->n); k->b = read_doubles(k->n * k->n);
    k->work = doubles(2 * k->n * (k->n + k->m));
    k->unit_re = doubles(k->m * k->n * points); k->unit_im = doubles(k->m * k->n * points);
    k->current_re = doubles(k->m * points); k->current_im = doubles(k->m * points);
    nodes += k->n;
  }
  double **re = malloc(sizeof(double *) * (size_t)nodes), **im = malloc(sizeof(double *) * (size_t)nodes);
  for (int i = 0; i < nodes; i++) { re[i] = doubles(points); im[i] = doubles(points); }
  for (int r = 0; r < repeats; r++) {
    struct timespec from, to;
    clock_gettime(CLOCK_MONOTONIC, &from);
    for (int b = 0; b < blocks; b++) solve_block(q + b, hz, points, re, im);
    clock_gettime(CLOCK_MONOTONIC, &to);
    printf("%.3f\n", (double)(to.tv_sec - from.tv_sec) * 1e6 + (double)(to.tv_nsec - from.tv_nsec) / 1e3);
  }
  double sum = 0;
  for (int i = 0; i < nodes; i++)
    for (int f = 0; f < points; f++) sum += sqrt(re[i][f] * re[i][f] + im[i][f] * im[i][f]);
  printf("%.17g\n", sum);
  return 0;
}
