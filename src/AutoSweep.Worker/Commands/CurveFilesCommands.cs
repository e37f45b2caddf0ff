using System.CommandLine;
using AutoSweep.Core.Curve;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep curve import</c> and <c>export</c>.</summary>
internal static class CurveFilesCommands
{
    /// <summary>A target from a CSV file, whole or not at all.</summary>
    internal static Command Import()
    {
        var file = new Argument<string>("FILE")
        {
            Description = "CSV with a first line such as output,level_mv,tolerance_db. Units of level: "
                + $"{string.Join(' ', LevelUnit.All.Select(unit => unit.Symbol))}. Semicolons with decimal commas are read too.",
        };
        var name = new Option<string?>("--name") { Description = "What the curve is called. Left out: the file's name.", HelpName = "TEXT" };
        return CurveCommand.Build("import", "Takes a job's target curve from a CSV file: all of it, or nothing and every bad line named.",
            async (parsed, folder, cancellationToken) =>
        {
            var path = parsed.GetValue(file)!;
            using var record = TargetChoice.Open(folder);
            var import = await CurveFile.ReadAsync(path, record.Profile, cancellationToken);
            foreach (var note in import.Notes)
                PlainWidth.Console().WriteLine($"Note: {note}.");
            var source = $"the file {Path.GetFileName(path)}, levels in {import.Unit.Symbol}";
            CurveCommand.Tell(
                TargetChoice.Choose(record, _ => new(parsed.GetValue(name) ?? Path.GetFileNameWithoutExtension(path), source, import.Points)), folder);
        }, file, name);
    }

    /// <summary>The target, or a curve that was read, as a CSV file.</summary>
    internal static Command Export()
    {
        var file = new Argument<string?>("FILE") { Description = "The file. Left out: standard output.", Arity = ArgumentArity.ZeroOrOne };
        var stand = new Option<CurveStand?>("--stand")
        {
            Description = $"Instead of the target, levels that were read: {string.Join(", ", Enum.GetNames<CurveStand>())}.",
            HelpName = "STAND",
        };
        return CurveCommand.Build("export", "Writes the target in force as CSV, or a curve that was read.", async (parsed, folder, cancellationToken) =>
        {
            var state = JobReading.Read(folder).State;
            var text = CurveCsv.Text(parsed.GetValue(stand) is { } which ? AsTarget(LevelCurve.Of(state, which)) : TargetCurve.Of(state));
            if (parsed.GetValue(file) is { } path)
                await CurveFile.WriteAsync(path, text, cancellationToken);
            else
                await Console.Out.WriteAsync(text.AsMemory(), cancellationToken);
        }, file, stand);
    }

    private static TargetCurve AsTarget(LevelCurve curve) => new("", "", [.. curve.Points.Where(point => point.Millivolts > 0)
        .Select(point => new TargetPoint(point.Output, point.Millivolts, TargetCurve.UsualToleranceDecibels))]);
}
