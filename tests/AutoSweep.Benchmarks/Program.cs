using System.Diagnostics;
using AutoSweep.Core.Peaks;
using AutoSweep.Sources;
#pragma warning disable RS0030
var n = args.Length > 0 ? int.Parse(args[0], System.Globalization.CultureInfo.InvariantCulture) : 2400;
var sw = Stopwatch.StartNew();
var sources = SourceLibrary.Take(n, args.Length > 1 ? int.Parse(args[1], System.Globalization.CultureInfo.InvariantCulture) : 1);
Console.WriteLine($"sources {sw.Elapsed.TotalSeconds:0.0} s");
sw.Restart();
var runs = sources.AsParallel().AsOrdered().Select(s => (s, r: SearchRun.Of(s))).ToArray();
Console.WriteLine($"searches {sw.Elapsed.TotalSeconds:0.0} s");
foreach (var g in runs.GroupBy(x => x.s.Family).Append(runs.GroupBy(_ => SourceFamily.Series).Single()))
{
    var loss = g.Select(x => x.s.LossDecibels(x.r.Peak!.Value.Picofarads)).Order().ToArray();
    var reads = g.Select(x => x.r.Trace.Count).Order().ToArray();
    var z = g.Select(x => Math.Abs(x.r.Peak!.Value.Picofarads - x.s.Peak.Picofarads) / x.r.PeakSdPicofarads).ToArray();
    var law = g.GroupBy(x => x.r.Law).Select(l => $"{l.Key}:{l.Count()}");
    var why = g.GroupBy(x => x.r.Reason).Select(l => $"{l.Key}:{l.Count()}");
    Console.WriteLine($"{g.Key,-8} n {loss.Length,5} loss50 {loss[loss.Length / 2]:0.00000} 95 {loss[(int)(loss.Length * 0.95)]:0.0000} 99 {loss[(int)(loss.Length * 0.99)]:0.0000} 99.9 {loss[(int)(loss.Length * 0.999)]:0.000}  reads med {reads[reads.Length / 2]} mean {reads.Average():0.00} 95 {reads[(int)(reads.Length * .95)]} out99 {z.Count(v => !(v <= 2.576)) / (double)z.Length:0.0000} z50 {z.Order().ElementAt(z.Length / 2):0.00} {string.Join(" ", law)} {string.Join(" ", why)}");
}
Console.WriteLine(string.Join(" ", runs.GroupBy(x => x.r.Trace.Count).OrderBy(x => x.Key).Select(x => $"{x.Key}:{x.Count()}")));
if (args.Length > 2)
    foreach (var (s, r) in runs.Where(x => x.s.LossDecibels(x.r.Peak!.Value.Picofarads) > (x.s.Family < SourceFamily.Coupled ? 0.01 : 0.05) || Math.Abs(x.r.Peak!.Value.Picofarads - x.s.Peak.Picofarads) / x.r.PeakSdPicofarads > 3.5).Take(25))
        Console.WriteLine($"{s.Family} C* {s.Peak.Picofarads:0} w {s.Peak.HalfWidthPicofarads:0} Q {s.Peak.Q:0.0} prior {s.ExpectedPicofarads / s.Peak.Picofarads:0.00} s {s.RelativeNoise:0.0000} hum {s.HumShare:0.000} -> {r.Reason} {r.Law} loss {s.LossDecibels(r.Peak!.Value.Picofarads):0.000} off {(r.Peak!.Value.Picofarads - s.Peak.Picofarads) / s.Peak.HalfWidthPicofarads:0.000}w sd {r.PeakSdPicofarads / s.Peak.HalfWidthPicofarads:0.000}w Q {r.Q:0.0} : {string.Join(" ", r.Trace.Select(t => $"{(t.Reading.Capacitance.Picofarads - s.Peak.Picofarads) / s.Peak.HalfWidthPicofarads:0.00}{(t.Used ? "" : "x")}"))}");
