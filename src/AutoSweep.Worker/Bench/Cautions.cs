namespace AutoSweep.Worker.Bench;

/// <summary>The usual cautions of the trade (common practice), shown at the step where they matter.</summary>
public static class Cautions
{
    /// <summary>Before the generator runs on the bench.</summary>
    public const string SpinningGenerator =
        "CAUTION: the motor, its capacitor and switch carry mains; cover the terminals, use an isolating transformer and a "
        + "residual-current device. Shaft and wheels spin: keep hair, sleeves and screwdrivers away. Local codes and "
        + "licensed practice come first.";

    /// <summary>Before magnets are moved.</summary>
    public const string Magnets =
        "CAUTION: a magnet that touches a turning wheel chips its teeth and ruins the generator. Stop the generator for the move where you can; away from the "
        + "wheel first, then in small steps; use a tool that is not magnetic and cannot fall in. Keep hair, sleeves and cables away from shaft and wheels, hands away from "
        + "the mains. Local codes and licensed practice come first.";

    /// <summary>Before old capacitors come off.</summary>
    public const string OldCapacitors =
        "CAUTION: old wax capacitors may hold harmful impregnants: do not heat or cut them, wear gloves, dispose of them by local rule. "
        + "Discharge capacitors before you handle them. Solder gives off fumes and may hold lead: extract, and wash your hands.";
}
