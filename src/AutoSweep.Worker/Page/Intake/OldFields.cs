using System.Globalization;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Page.Shared;
using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>An old capacitor that came off, as a person types it.</summary>
public sealed class OldFields
{
    /// <summary>The output that it came off.</summary>
    public string Output { get; set; } = "";

    /// <summary>What it measured; empty where it does not measure as a capacitor any more.</summary>
    public string Measured { get; set; } = "";

    /// <summary>Its dissipation factor.</summary>
    public string Dissipation { get; set; } = "";

    /// <summary>Its printed value.</summary>
    public string Nominal { get; set; } = "";

    /// <summary>The year in which it was made; stays for the next one.</summary>
    public string Year { get; set; } = "";

    /// <summary>What was odd.</summary>
    public string Note { get; set; } = "";

    /// <summary>What is known of a whole set that is read at the clips: its printed value and its year.</summary>
    /// <exception cref="Core.BenchFaultException">A field cannot be understood.</exception>
    public OldSetLabel Label() => new(TypedField.CapacitanceOrNone(Nominal, "Printed value")?.Picofarads, MadeIn());

    /// <summary>The event.</summary>
    /// <param name="job">The job's name in the ledger.</param>
    /// <param name="outputs">The generator's outputs.</param>
    /// <param name="now">The time.</param>
    /// <exception cref="Core.BenchFaultException">A field cannot be understood, or there is no such output.</exception>
    public OldCapacitorRemoved Read(string job, IReadOnlyCollection<int> outputs, DateTimeOffset now)
    {
        if (TypedField.WholeOrNone(Output, "Output", 1, 9999) is not { } output || !outputs.Contains(output))
            throw TypedField.Refuse(Output, "Output", FormattableString.Invariant($"an output of this generator, {outputs.Min()} to {outputs.Max()}"));
        var dissipation = TypedField.NumberOrNone(Dissipation, "Dissipation factor D", 0, 10);
        return new(job, output, TypedField.CapacitanceOrNone(Measured, "Measured") is { } value ? new(value.Picofarads, 0, now, dissipation) : null,
            TypedField.CapacitanceOrNone(Nominal, "Printed value")?.Picofarads, TypedField.TextOrNone(Note, "What was odd"), MadeIn());
    }

    /// <summary>Empties the fields for the next one: of the same set, so the year stays.</summary>
    public void GoOn() => (Output, Measured, Dissipation, Nominal, Note) = ("", "", "", "", "");

    private int? MadeIn() => TypedField.WholeOrNone(Year, "Year", 1900, 2100);

    /// <summary>How far a capacitor has drifted from its printed value; empty where either is not known.</summary>
    public static string Drift(OldCapacitorRemoved old) => CapacitorDrift.Percent(old) is { } drift ? FormattableString.Invariant($"{drift:+0.0;-0.0} %") : "";

    /// <summary>Its dissipation factor, to the fourth decimal; empty where it is not known.</summary>
    public static string Loss(OldCapacitorRemoved old) => old.Measured?.Dissipation is { } loss ? loss.ToString("0.0000", CultureInfo.InvariantCulture) : "";

    /// <summary>What it measured in words.</summary>
    public static string Value(OldCapacitorRemoved old) => old.Measured is { } measured
        ? new Capacitance(measured.Picofarads).ToString() : "no capacitor any more";
}
