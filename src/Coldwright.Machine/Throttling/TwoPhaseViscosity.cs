namespace Coldwright.Machine.Throttling;

/// <summary>Rule for the one viscosity that stands for all phases of a homogeneous flow.</summary>
public enum TwoPhaseViscosity
{
    /// <summary>1/viscosity = sum of mass fraction over viscosity (W. H. McAdams, W. K. Woods, L. C. Heroman, Trans. ASME 64, 1942, 193-200): low, the vapour counts soon.</summary>
    McAdams,
    /// <summary>viscosity = sum of mass fraction times viscosity (A. Cicchitti et al., Energia Nucleare 7, 1960, 407-425): high, the liquid wets the wall.</summary>
    Cicchitti,
    /// <summary>viscosity = sum of volume fraction times viscosity (A. E. Dukler, M. Wicks, R. G. Cleveland, AIChE J. 10, 1964, 38-51): lowest.</summary>
    Dukler,
}
