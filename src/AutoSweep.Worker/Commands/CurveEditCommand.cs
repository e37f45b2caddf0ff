using System.CommandLine;
using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Core.Generator;
using AutoSweep.Worker.Curves;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep curve edit</c>: one output's target.</summary>
internal static class CurveEditCommand
{
    /// <summary>The command.</summary>
    internal static Command Build()
    {
        var output = new Argument<int>("OUTPUT") { Description = "The output's number." };
        var level = new Option<double?>("--level-mv") { Description = "Its target level in millivolts rms.", HelpName = "MV" };
        var tolerance = new Option<double?>("--tolerance-db") { Description = "How far it may be off to either side.", HelpName = "DB" };
        var none = new Option<bool>("--no-target") { Description = "It has no target any more." };
        level.Validators.Add(result => Check(result.GetValueOrDefault<double?>(), 0.001, 10_000, level, result.AddError));
        tolerance.Validators.Add(result => Check(
            result.GetValueOrDefault<double?>(), TargetPoint.LeastToleranceDecibels, TargetPoint.MostToleranceDecibels, tolerance, result.AddError));
        return CurveCommand.Build("edit", "Changes the target of one output; --level-mv, --tolerance-db or both, or --no-target.", (parsed, folder, _) =>
        {
            using var record = TargetChoice.Open(folder);
            var number = Known(record.Profile, parsed.GetValue(output));
            CurveCommand.Tell(TargetChoice.Choose(record, target => parsed.GetValue(none)
                ? Edited(target.Without(number))
                : Edited(target.With(Point(target, number, parsed.GetValue(level), parsed.GetValue(tolerance))))), folder);
            return Task.CompletedTask;
        }, output, level, tolerance, none);
    }

    private static TargetPoint Point(TargetCurve target, int output, double? level, double? tolerance)
    {
        var before = target.Points.FirstOrDefault(point => point.Output == output);
        if (level is null && tolerance is null)
            throw new BenchFaultException(
                BenchFault.BadFile, "nothing to change", "--level-mv, --tolerance-db or --no-target", "say what the output's target is");
        return (level ?? before?.Millivolts) is { } millivolts
            ? new(output, millivolts, tolerance ?? before?.ToleranceDecibels ?? TargetCurve.UsualToleranceDecibels)
            : throw new BenchFaultException(
                BenchFault.BadFile, $"output {output} has no target level yet", "a level beside the tolerance", "give --level-mv too");
    }

    private static TargetCurve Edited(TargetCurve target) =>
        target.Source.EndsWith(", edited", StringComparison.Ordinal) ? target : target with { Source = target.Source + ", edited" };

    private static int Known(GeneratorProfile profile, int output) => profile.Outputs.Any(one => one.Number == output) ? output
        : throw new BenchFaultException(
            BenchFault.BadFile, $"{profile.Name} has no output {output}", $"{profile.Outputs[0].Number} to {profile.Outputs[^1].Number}",
            "name another output");

    private static void Check(double? value, double least, double most, Option option, Action<string> refuse)
    {
        if (value is { } number && !(number >= least && number <= most))
            refuse(FormattableString.Invariant($"{option.Name} is {number}; expected a number from {least} to {most}."));
    }
}
