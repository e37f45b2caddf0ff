using System.CommandLine;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep stock add</c>: one part by hand, where there is no meter with a port.</summary>
public static class StockAddCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var value = new Argument<Capacitance?>("VALUE")
        {
            Description = $"The measured value: {TypedCapacitance.Expected}.",
            CustomParser = CapacitanceOption.Parse,
            Arity = ArgumentArity.ExactlyOne,
        };
        var id = new Option<string?>("--id") { Description = "The part's id. Left out: the next free one.", HelpName = "ID" };
        var uncertainty = new Option<Capacitance?>("--uncertainty")
        {
            Description = "Standard uncertainty of the value. Left out: none.",
            HelpName = "VALUE",
            CustomParser = CapacitanceOption.Parse,
        };
        var dissipation = new Option<double?>("--dissipation")
        {
            Description = "Dissipation factor, a plain ratio such as 0.0004.",
            HelpName = "D",
        };
        var nominal = new Option<Capacitance?>("--nominal")
        {
            Description = "The printed value.",
            HelpName = "VALUE",
            CustomParser = CapacitanceOption.Parse,
        };
        var tolerance = new Option<string?>("--tolerance")
        {
            Description = "The printed tolerance letter (IEC 60062), such as J for 5 %.",
            HelpName = "LETTER",
        };
        var dielectric = new Option<string?>("--dielectric")
        {
            Description = "The dielectric, such as polypropylene.",
            HelpName = "WORD",
        };
        var volts = new Option<double?>("--volts") { Description = "The rated voltage.", HelpName = "VOLTS" };
        var bin = new Option<string?>("--bin")
        {
            Description = "The bin. Left out: by value, see autosweep stock bins.",
            HelpName = "BIN",
        };
        var meter = new Option<string?>("--meter") { Description = "The meter that it was read from.", HelpName = "NAME" };
        tolerance.AcceptOnlyFromAmong([.. ToleranceLetters.Percent.Keys]);
        var command = StockCommand.Build("add", "Takes in one part by hand.", (parsed, ledger, cancellationToken) =>
            StockCommand.AppendAsync(
            ledger,
            stock => new PartsTakenIn(
            [
                new()
                {
                    Id = parsed.GetValue(id) ?? stock.FreshIds().First(),
                    Measured = new(
                        parsed.GetValue(value)!.Value.Picofarads, parsed.GetValue(uncertainty)?.Picofarads ?? 0,
                        TimeProvider.System.GetUtcNow(), parsed.GetValue(dissipation), parsed.GetValue(meter)),
                    NominalPicofarads = parsed.GetValue(nominal)?.Picofarads,
                    ToleranceLetter = parsed.GetValue(tolerance),
                    Dielectric = parsed.GetValue(dielectric),
                    RatedVolts = parsed.GetValue(volts),
                    Bin = parsed.GetValue(bin),
                },
            ], "typed"),
            answer => Told(answer.State, ((PartsTakenIn)answer.Entry!.Event).Parts[0]),
            cancellationToken));
        command.Add(value);
        foreach (var option in new Option[] { id, uncertainty, dissipation, nominal, tolerance, dielectric, volts, bin, meter })
            command.Add(option);
        return command;
    }

    private static string Told(StockState state, Part part)
    {
        var odd = ToleranceLetters.Fits(part.Measured.Picofarads, part.NominalPicofarads, part.ToleranceLetter)
            ? ""
            : $" It lies outside {new Capacitance(part.NominalPicofarads!.Value)} {part.ToleranceLetter} as printed: check both.";
        return $"{part.Id}, {part.Capacitance}: bin {part.Bin ?? state.Bins().BinOf(part.Measured.Picofarads)}.{odd}";
    }
}
