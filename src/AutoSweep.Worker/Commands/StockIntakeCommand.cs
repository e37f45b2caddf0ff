using System.CommandLine;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep stock intake</c>: parts come in as they are clipped.</summary>
public static class StockIntakeCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var bench = new PartsFlags();
        var count = new Option<int?>("--count") { Description = "End after so many parts. Left out: when the person ends it.", HelpName = "N" };
        var nominal = new Option<Capacitance?>("--nominal") { Description = "The value printed on them all.", HelpName = "VALUE", CustomParser = CapacitanceOption.Parse };
        var tolerance = new Option<string?>("--tolerance") { Description = "The tolerance letter printed on them (IEC 60062), such as J for 5 %.", HelpName = "LETTER" };
        var dielectric = new Option<string?>("--dielectric") { Description = "Their dielectric, such as polypropylene.", HelpName = "WORD" };
        var volts = new Option<double?>("--volts") { Description = "Their rated voltage.", HelpName = "VOLTS" };
        tolerance.AcceptOnlyFromAmong([.. ToleranceLetters.Percent.Keys]);
        var command = StockCommand.Build("intake", "Takes parts in as they are clipped to the capacitance meter: clip, beep, off, next. Says each part's bin.", async (parsed, ledger, cancellationToken) =>
        {
            var label = new IntakeLabel(parsed.GetValue(nominal)?.Picofarads, parsed.GetValue(tolerance), parsed.GetValue(dielectric), parsed.GetValue(volts));
            await using var open = await bench.OpenAsync(parsed, cancellationToken);
            Console.Out.WriteLine(open.Instruction);
            var taken = await new PartIntake(open.Parts, ledger, label, Console.Out, TimeProvider.System).RunAsync(parsed.GetValue(count), cancellationToken);
            Console.Out.WriteLine($"{taken} parts taken into {ledger.Path}. Take one back with: autosweep stock undo");
        });
        bench.AddTo(command);
        foreach (var option in new Option[] { count, nominal, tolerance, dielectric, volts })
            command.Add(option);
        return command;
    }
}
