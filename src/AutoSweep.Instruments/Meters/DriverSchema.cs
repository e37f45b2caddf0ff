using AutoSweep.Core.StrictJson;

namespace AutoSweep.Instruments.Meters;

/// <summary>The JSON schema of driver files, made from the types that read them.</summary>
public static class DriverSchema
{
    /// <summary>The schema's text, as <c>drivers/driver.schema.json</c> holds it.</summary>
    public static string Text => JsonFieldSchema.Of<MeterDriver>("Meter driver");
}
