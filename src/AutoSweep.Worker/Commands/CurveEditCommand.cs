using System.CommandLine;
using AutoSweep.Core.Curve;
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
        level.Validators.Add(result => Check(
            result.GetValueOrDefault<double?>(), TargetEdit.LeastMillivolts, TargetEdit.MostMillivolts, level, result.AddError));
        tolerance.Validators.Add(result => Check(
            result.GetValueOrDefault<double?>(), TargetPoint.LeastToleranceDecibels, TargetPoint.MostToleranceDecibels, tolerance, result.AddError));
        return CurveCommand.Build("edit", "Changes the target of one output; --level-mv, --tolerance-db or both, or --no-target.", (parsed, folder, _) =>
        {
            using var record = TargetChoice.Open(folder);
            var edit = new TargetEdit(parsed.GetValue(output), parsed.GetValue(level), parsed.GetValue(tolerance), parsed.GetValue(none));
            CurveCommand.Tell(edit.Apply(record), folder);
            return Task.CompletedTask;
        }, output, level, tolerance, none);
    }

    private static void Check(double? value, double least, double most, Option option, Action<string> refuse)
    {
        if (value is { } number && !(number >= least && number <= most))
            refuse(FormattableString.Invariant($"{option.Name} is {number}; expected a number from {least} to {most}."));
    }
}
