using System.CommandLine;
using System.Globalization;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep stock old</c>: the capacitors that were taken off, and how far they had drifted.</summary>
public static class StockOldCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var job = new Option<string>("--job") { Description = "The job's folder.", HelpName = "DIR", Required = true };
        var output = new Option<int?>("--output")
        {
            Description = "The output from which it was taken. Left out: lists those that are logged.",
            HelpName = "N",
        };
        var measured = new Option<Capacitance?>("--measured")
        {
            Description = "What it measured. Left out: it does not measure as a capacitor any more.",
            HelpName = "VALUE",
            CustomParser = CapacitanceOption.Parse,
        };
        var nominal = new Option<Capacitance?>("--nominal")
        {
            Description = "Its printed value.",
            HelpName = "VALUE",
            CustomParser = CapacitanceOption.Parse,
        };
        var dissipation = new Option<double?>("--dissipation")
        {
            Description = "Its dissipation factor D at 1 kHz, where the meter tells.",
            HelpName = "D",
        };
        var note = new Option<string?>("--note") { Description = "What was odd about it.", HelpName = "TEXT" };
        var year = Year();
        var command = StockCommand.Build("old", "Logs an old capacitor that was taken off, or lists how far the old set had drifted.",
            async (parsed, ledger, cancellationToken) =>
        {
            var name = JobName(parsed.GetValue(job)!);
            if (parsed.GetValue(output) is not { } number)
            {
                Show(PlainWidth.Console(), ledger.Read(), name);
                return;
            }

            AnsiConsole.WriteLine(Cautions.OldCapacitors);
            var value = parsed.GetValue(measured) is { } picofarads ? new PartMeasurement(picofarads.Picofarads, 0,
                TimeProvider.System.GetUtcNow(), parsed.GetValue(dissipation)) : null;
            await StockCommand.AppendAsync(
                ledger, _ => new OldCapacitorRemoved(name, number, value, parsed.GetValue(nominal)?.Picofarads, parsed.GetValue(note), parsed.GetValue(year)),
                _ => $"The old capacitor of output {number} is logged.", cancellationToken);
        });
        foreach (var option in new Option[] { job, output, measured, dissipation, nominal, note, year })
            command.Add(option);
        return command;
    }

    /// <summary>The flag for the year in which old capacitors were made.</summary>
    internal static Option<int?> Year()
    {
        var year = new Option<int?>("--year") { Description = "The year in which it or the generator was made, for autosweep history drift.", HelpName = "YEAR" };
        year.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int?>() is < 1900 or > 2100)
                result.AddError("--year: expected a year from 1900 to 2100.");
        });
        return year;
    }

    // Read without the job's lock: logging an old part must not stop a running sweep.
    private static string JobName(string folder) => StockJob.NameOf(JobReading.Read(folder).State);

    private static void Show(IAnsiConsole console, StockState state, string job)
    {
        var table = new Table().AddColumns("output", "measured", "nominal", "drift", "made in", "note");
        foreach (var old in state.OldCapacitors.Values.Where(old => old.Job == job).OrderBy(old => old.Output))
        {
            table.AddRow(
                old.Output.ToString(CultureInfo.InvariantCulture), old.Measured is { } measured
                    ? new Capacitance(measured.Picofarads).ToString() : "none",
                old.NominalPicofarads is { } nominal ? new Capacitance(nominal).ToString() : "", Drift(old), old.MadeIn?.ToString(CultureInfo.InvariantCulture) ?? "",
                    (old.Note ?? "").EscapeMarkup());
        }

        console.Write(table);
    }

    private static string Drift(OldCapacitorRemoved old) =>
        CapacitorDrift.Percent(old) is { } drift ? string.Create(CultureInfo.InvariantCulture, $"{drift:+0.0;-0.0} %") : "";
}
