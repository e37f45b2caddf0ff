namespace AutoSweep.Instruments.Links;

/// <summary>A USB test and measurement instrument: <c>USB[board]::vendor::product::serial[::interface][::INSTR]</c>.</summary>
/// <param name="Text">The name as written.</param>
/// <param name="Vendor">The USB vendor number.</param>
/// <param name="Product">The USB product number.</param>
/// <param name="Serial">The instrument's serial number.</param>
public sealed record UsbResource(string Text, int Vendor, int Product, string Serial) : ResourceName(Text);
