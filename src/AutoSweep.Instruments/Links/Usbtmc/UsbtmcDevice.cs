namespace AutoSweep.Instruments.Links.Usbtmc;

/// <summary>A USBTMC instrument that the kernel has found.</summary>
/// <param name="File">Its device file, such as <c>/dev/usbtmc0</c>.</param>
/// <param name="Vendor">USB vendor number.</param>
/// <param name="Product">USB product number.</param>
/// <param name="Serial">Its serial number; empty when it tells none.</param>
/// <param name="Description">What it says of itself: maker and product; empty when nothing.</param>
public sealed record UsbtmcDevice(string File, int Vendor, int Product, string Serial, string Description)
{
    /// <summary>The resource name that finds it again in any socket; its device file where it has no serial number.</summary>
    public string Resource => Serial.Length > 0
        ? FormattableString.Invariant($"USB::0x{Vendor:X4}::0x{Product:X4}::{Serial}::INSTR")
        : File;

    /// <summary>Whether a resource name means this instrument. Letter case does not count (VPP-4.3, 4.3).</summary>
    public bool Is(UsbResource resource) =>
        (Vendor, Product) == (resource.Vendor, resource.Product)
        && Serial.Equals(resource.Serial, StringComparison.OrdinalIgnoreCase);
}
