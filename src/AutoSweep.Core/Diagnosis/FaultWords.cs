namespace AutoSweep.Core.Diagnosis;

/// <summary>What a fault is called, and how a person makes sure of it.</summary>
public static class FaultWords
{
    private const string Spinning = "Stop the motor and pull the mains plug before a hand goes near shaft, wheels or wiring.";
    private const string OldParts = "Old wax capacitors may hold harmful impregnants: gloves, no heat, dispose of them by local rule.";

    /// <summary>The fault in a few words.</summary>
    public static string Name(GeneratorFault fault) => fault switch
    {
        GeneratorFault.DeadPickup => "dead pickup",
        GeneratorFault.MiswiredTerminals => "miswired terminals",
        GeneratorFault.CapacitorDrifted => "capacitor drifted",
        GeneratorFault.CapacitorOpen => "capacitor open",
        GeneratorFault.CapacitorLeaky => "capacitor leaky",
        GeneratorFault.WeakMagnet => "weak magnet",
        GeneratorFault.StrongMagnet => "strong magnet",
        GeneratorFault.UnsteadyWheel => "unsteady wheel",
        GeneratorFault.HumWithoutTone => "hum without tone",
        GeneratorFault.OffSpeed => "off speed",
        _ => "meter loading",
    };

    /// <summary>How to confirm it, with the usual caution of the trade (common practice, no source).</summary>
    public static string Confirm(GeneratorFault fault) => fault switch
    {
        GeneratorFault.DeadPickup => "With the generator stopped, measure the coil's resistance from the terminal to the frame: tens to hundreds "
            + $"of ohms if it is whole, open if it is broken. {Spinning}",
        GeneratorFault.MiswiredTerminals => $"Follow the two leads from coil or filter to the terminal strip. {Spinning}",
        GeneratorFault.CapacitorDrifted => $"Where C and D of the old capacitor are not written down, measure them at 1 kHz once it is off. {OldParts}",
        GeneratorFault.CapacitorOpen => "Heat its joints anew or clip a good capacitor of about the printed value across it: the tone comes "
            + $"back. Measure it once it is off. {OldParts}",
        GeneratorFault.CapacitorLeaky => "Where C and D of the old capacitor are not written down, measure them at 1 kHz once it is off: D above 0.05 takes level however well it is "
            + $"tuned; a handheld meter without D shows such a part too high. {OldParts}",
        GeneratorFault.WeakMagnet => "Clip off, clip on, read again. Compare the rod's gap with its neighbours' by eye. The rod is moved only after "
            + $"the recap and only in small steps, away first: a touched wheel ruins the generator. {Spinning}",
        GeneratorFault.StrongMagnet => "Clip off, clip on, read again. Look whether the rod's tip stands nearer than its neighbours'; a rod that "
            + $"creeps inward ends in the wheel. Away first, in small steps. {Spinning}",
        GeneratorFault.UnsteadyWheel => "Read it again after the warm-up. Turn the shaft by hand and watch the gap between wheel and rod over one turn. "
            + Spinning,
        GeneratorFault.HumWithoutTone => "Look whether this wheel turns with its neighbours: a sheared clutch or a gummed bearing lets it stand. Look "
            + $"from a distance while it runs; keep hair, sleeves and tools away. {Spinning}",
        GeneratorFault.OffSpeed => "Count the mains itself at a safe low-voltage point (a small certified transformer's secondary), or ask what "
            + "the frequency converter is set to. Mains wiring belongs to licensed hands.",
        _ => "Clip the meter on without the usual leads and amplifier, or a second meter beside it: if the level of a filtered output changes, "
            + "what is clipped on loads it. Check the input against its data sheet (1 Mohm or more).",
    };
}
