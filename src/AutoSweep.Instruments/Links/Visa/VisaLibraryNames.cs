namespace AutoSweep.Instruments.Links.Visa;

/// <summary>Under which names a VISA library is looked for, in order.</summary>
/// <param name="Names">File names, which the system looks for in its usual places, or paths.</param>
public sealed record VisaLibraryNames(IReadOnlyList<string> Names)
{
    /// <summary>The environment variable that names the library to be used, alone.</summary>
    public const string Variable = "AUTOSWEEP_VISA";

    // File names from users' reports (libvisa.so, visa64.dll, visa32.dll, the vxipnp path) and from memory (the rest). On 64-bit Windows
    // visa32.dll in System32 is the 64-bit library too.
    private static readonly string[] Windows = ["visa64.dll", "visa32.dll"];
    private static readonly string[] Linux =
    [
        "libvisa.so", "libvisa.so.0", "librsvisa.so", "libiovisa.so", "libktvisa32.so",
        "/usr/local/vxipnp/linux/lib64/libvisa.so", "/opt/keysight/iolibs/libktvisa32.so",
    ];
    private static readonly string[] Mac = ["/Library/Frameworks/VISA.framework/VISA", "/Library/Frameworks/RsVisa.framework/RsVisa"];

    /// <summary>The usual names on this system, or the one that <see cref="Variable"/> gives.</summary>
    public static VisaLibraryNames Usual => Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } chosen
        ? new([chosen])
        : new(OperatingSystem.IsWindows() ? Windows : OperatingSystem.IsMacOS() ? Mac : Linux);
}
