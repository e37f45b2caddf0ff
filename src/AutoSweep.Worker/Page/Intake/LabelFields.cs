using AutoSweep.Worker.Page.Shared;
using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>What is printed on the parts of a bag, and how they are measured, as a person types it.</summary>
public sealed class LabelFields
{
    /// <summary>The printed value.</summary>
    public string Nominal { get; set; } = "";

    /// <summary>The printed tolerance letter; empty where there is none.</summary>
    public string Tolerance { get; set; } = "";

    /// <summary>The dielectric.</summary>
    public string Dielectric { get; set; } = "";

    /// <summary>The rated voltage in volts.</summary>
    public string Volts { get; set; } = "";

    /// <summary>Whether values are typed.</summary>
    public bool IsTyped { get; set; }

    /// <summary>The accuracy of typed values in per cent.</summary>
    public string Accuracy { get; set; } = TypedField.Shown(PartOptions.HandheldPercent);

    /// <summary>The label.</summary>
    /// <exception cref="Core.BenchFaultException">A field cannot be understood.</exception>
    public IntakeLabel Read() => new(
        TypedField.CapacitanceOrNone(Nominal, "Printed value")?.Picofarads, TypedField.TextOrNone(Tolerance, "Tolerance letter"), TypedField.TextOrNone(Dielectric, "Dielectric"),
        TypedField.NumberOrNone(Volts, "Rated voltage", 1, 100_000));

    /// <summary>How parts are measured.</summary>
    /// <exception cref="Core.BenchFaultException">The accuracy cannot be understood.</exception>
    public PartOptions Options() => new(IsTyped, TypedField.NumberOrNone(Accuracy, "Accuracy of typed values", 0, 20) ?? PartOptions.HandheldPercent);
}
