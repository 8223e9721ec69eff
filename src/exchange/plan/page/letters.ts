/** Height of a capital letter over the size of the letters; 0.66 to 0.73 in usual typefaces. @source COMMON-PRACTICE */
export const capitalOfSize = 0.7;

/** Mean width of a letter over the size of the letters. @source COMMON-PRACTICE */
export const widthOfSize = 0.55;
